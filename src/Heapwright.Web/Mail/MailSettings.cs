using Heapwright.Web.Showing;
using MimeKit;

namespace Heapwright.Web.Mail;

/// <summary>The server that carries mail, from the environment.</summary>
/// <param name="Host">Its name or address.</param>
/// <param name="Port">Its port.</param>
/// <param name="IsEncrypted">Whether it is reached over TLS from the first byte; otherwise TLS is begun where it offers it.</param>
/// <param name="From">The address that mail comes from.</param>
/// <param name="User">The name to sign in with; null for none.</param>
/// <param name="Password">The password; null for none.</param>
public sealed record MailSettings(
    string Host,
    int Port,
    bool IsEncrypted,
    string From,
    string? User,
    string? Password
)
{
    private const int UsualPort = 25;
    private const int UsualSignedInPort = 587;
    private const int UsualEncryptedPort = 465;

    /// <summary>Everything but the password: it must not get into a log by accident.</summary>
    public override string ToString() => $"{Host}:{Port}";

    /// <summary>
    /// The settings from HEAPWRIGHT_SMTP, HEAPWRIGHT_SMTP_FROM, HEAPWRIGHT_SMTP_USER, HEAPWRIGHT_SMTP_PASSWORD and
    /// HEAPWRIGHT_SMTP_PASSWORD_FILE; null where the first is not set or something is wrong.
    /// </summary>
    /// <param name="read">Reads one setting.</param>
    public static (MailSettings? Settings, string Wrong) Read(Func<string, string?> read)
    {
        ArgumentNullException.ThrowIfNull(read);
        if (read("HEAPWRIGHT_SMTP") is not { Length: > 0 } address)
        {
            return (null, "");
        }

        if (
            !Uri.TryCreate(address, UriKind.Absolute, out var uri)
            || uri.Scheme is not ("smtp" or "smtps")
            || uri.Host.Length == 0
            || uri.UserInfo.Length > 0
            || uri.PathAndQuery is not ("/" or "")
        )
        {
            // Whoever wrote a password into it shall not find it in a log.
            return (null, Say.Of("guard.smtp_address"));
        }

        var from = read("HEAPWRIGHT_SMTP_FROM");
        if (!IsAddress(from))
        {
            return (null, Say.Of("guard.smtp_from"));
        }

        var password = read("HEAPWRIGHT_SMTP_PASSWORD");
        if (read("HEAPWRIGHT_SMTP_PASSWORD_FILE") is { Length: > 0 } file)
        {
            try
            {
                password = File.ReadAllText(file).TrimEnd('\r', '\n');
            }
            catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
            {
                return (null, Say.Of("guard.smtp_password_file", file, problem.Message));
            }
        }

        var encrypted = uri.Scheme == "smtps";
        var user = read("HEAPWRIGHT_SMTP_USER") is { Length: > 0 } name ? name : null;
        return (
            new MailSettings(
                uri.Host,
                uri.Port > 0 ? uri.Port
                    : encrypted ? UsualEncryptedPort
                    : user is null ? UsualPort
                    : UsualSignedInPort,
                encrypted,
                from!,
                user,
                password
            ),
            ""
        );
    }

    /// <summary>Whether a text is one address of a mailbox.</summary>
    /// <param name="text">The text.</param>
    public static bool IsAddress(string? text) =>
        text is { Length: > 2 and <= 254 }
        && !text.Any(c => char.IsControl(c) || c is ',' or ';' or '<' or '>' or ' ')
        && MailboxAddress.TryParse(text, out var mailbox)
        && mailbox.Address == text
        && text.Contains('@', StringComparison.Ordinal);
}
