using System.Globalization;
using System.Net.Sockets;
using Heapwright.App.Coming;
using Heapwright.App.Ports;
using Heapwright.App.Sites;
using Heapwright.Web.Showing;
using MailKit;
using MailKit.Net.Smtp;
using MailKit.Security;
using MimeKit;
using NodaTime;
using NodaTime.Text;

namespace Heapwright.Web.Mail;

/// <summary>
/// Sends the coming days by mail, at most once a day and only if there is something to say. What was handed to the server
/// counts as sent, whatever it answered, so that nobody gets two.
/// </summary>
/// <param name="server">The server; off without one.</param>
/// <param name="settings">Where the address and what became of the last mail are kept.</param>
/// <param name="items">Where the site is kept.</param>
/// <param name="coming">The coming days.</param>
/// <param name="clock">The clock.</param>
public sealed class DailyMail(
    MailServer server,
    ISettingStore settings,
    IItemStore items,
    ComingDays coming,
    TimeProvider clock
)
{
    /// <summary>The hour at the site from which on the mail of a day is sent.</summary>
    public const int Hour = 6;

    private const string AddressName = "mail.address";
    private const string DayName = "mail.day";
    private const string FailureName = "mail.failure";
    private static readonly Duration BetweenTries = Duration.FromHours(1);
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);
    private Instant? tried;

    /// <summary>The address it goes to; null for none.</summary>
    /// <param name="cancel">Gives up.</param>
    public Task<string?> Address(CancellationToken cancel) => settings.Find(AddressName, cancel);

    /// <summary>Why the last try failed, with its moment; null where it did not.</summary>
    /// <param name="cancel">Gives up.</param>
    public Task<string?> Failure(CancellationToken cancel) => settings.Find(FailureName, cancel);

    /// <summary>Sets the address, or takes it away.</summary>
    /// <param name="address">The address; null for none.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task Change(string? address, CancellationToken cancel)
    {
        await settings.Put(AddressName, address, cancel);
        await settings.Put(FailureName, null, cancel);
        tried = null;
    }

    /// <summary>Sends the mail of today, if it is due.</summary>
    /// <param name="cancel">Gives up.</param>
    /// <returns>Null where none was due; otherwise whether it was sent.</returns>
    public async Task<bool?> IfDue(CancellationToken cancel)
    {
        if (
            server.Settings is not { } smtp
            || await Address(cancel) is not { } address
            || await items.Find<Site>(Site.OnlyId, cancel) is not { } site
        )
        {
            return null;
        }

        var now = clock.Now();
        var local = now.InZone(site.TimeZone());
        var day = LocalDatePattern.Iso.Format(local.Date);
        if (
            local.Hour < Hour
            || tried + BetweenTries > now
            || await settings.Find(DayName, cancel) == day
        )
        {
            return null;
        }

        var days = await coming.From(now, site.TimeZone(), cancel);
        if (!DigestMail.IsWorthSending(days, local.Date))
        {
            return null;
        }

        tried = now;
        var show = new Shown(site.Units, CultureInfo.GetCultureInfo(site.Language));
        // Nobody asks for this page, so the language is that of the site; it is so for this mail only.
        CultureInfo.CurrentCulture = show.Culture;
        CultureInfo.CurrentUICulture = show.Culture;
        var mail = DigestMail.Of(
            days,
            local.Date,
            site.Name,
            show,
            smtp.From,
            address,
            local.ToDateTimeOffset()
        );
        try
        {
            await Send(smtp, mail, () => settings.Put(DayName, day, cancel), cancel);
            await settings.Put(FailureName, null, cancel);
            return true;
        }
        catch (Exception problem)
            when (problem
                    is IOException
                        or SocketException
                        or ProtocolException
                        or CommandException
                        or AuthenticationException
                        or SslHandshakeException
                        or NotSupportedException
                        or TimeoutException
            )
        {
            await settings.Put(
                FailureName,
                Say.Of("mail.failed", show.Moment(now, site.TimeZone()), smtp, problem.Message),
                cancel
            );
            return false;
        }
    }

    private static async Task Send(
        MailSettings smtp,
        MimeMessage mail,
        Func<Task> handedOver,
        CancellationToken cancel
    )
    {
        using var client = new SmtpClient { Timeout = (int)Patience.TotalMilliseconds };
        await client.ConnectAsync(
            smtp.Host,
            smtp.Port,
            smtp.IsEncrypted ? SecureSocketOptions.SslOnConnect
                // A password goes over no line that anyone can read.
                : smtp.User is not null ? SecureSocketOptions.StartTls
                : SecureSocketOptions.StartTlsWhenAvailable,
            cancel
        );
        if (smtp.User is { } user)
        {
            await client.AuthenticateAsync(user, smtp.Password ?? "", cancel);
        }

        await handedOver();
        await client.SendAsync(mail, cancel);
        await client.DisconnectAsync(quit: true, cancel);
    }
}
