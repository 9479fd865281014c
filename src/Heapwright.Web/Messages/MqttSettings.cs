using Heapwright.Web.Showing;

namespace Heapwright.Web.Messages;

/// <summary>Which broker is listened to, from the environment.</summary>
/// <param name="Host">Its name or address.</param>
/// <param name="Port">Its port.</param>
/// <param name="IsEncrypted">Whether it is reached over TLS.</param>
/// <param name="Prefix">What the topics begin with.</param>
/// <param name="User">The name to sign in with; null for none.</param>
/// <param name="Password">The password; null for none.</param>
public sealed record MqttSettings(
    string Host,
    int Port,
    bool IsEncrypted,
    string Prefix,
    string? User,
    string? Password
)
{
    private const int UsualPort = 1883;
    private const int UsualEncryptedPort = 8883;

    /// <summary>The topics that are listened to: entries of every heap.</summary>
    public string Topics => Prefix + "/heaps/+/entries";

    /// <summary>
    /// Reads HEAPWRIGHT_MQTT, HEAPWRIGHT_MQTT_USER, HEAPWRIGHT_MQTT_PASSWORD and HEAPWRIGHT_MQTT_PASSWORD_FILE, and has
    /// the broker listened to if the first is set.
    /// </summary>
    /// <param name="services">Where the subscription is added.</param>
    /// <param name="read">Reads one setting.</param>
    /// <param name="wrong">What is wrong with them.</param>
    /// <returns>Whether nothing is.</returns>
    public static bool Add(
        IServiceCollection services,
        Func<string, string?> read,
        out string wrong
    )
    {
        var counts = new MessageCounts();
        services.AddSingleton(counts);
        (var settings, wrong) = Read(read);
        if (settings is not null)
        {
            services.AddSingleton(settings);
            services.AddHostedService<MqttSubscription>();
        }

        return wrong.Length == 0;
    }

    /// <summary>The settings; null where HEAPWRIGHT_MQTT is not set or something is wrong.</summary>
    /// <param name="read">Reads one setting.</param>
    public static (MqttSettings? Settings, string Wrong) Read(Func<string, string?> read)
    {
        ArgumentNullException.ThrowIfNull(read);
        if (read("HEAPWRIGHT_MQTT") is not { Length: > 0 } address)
        {
            return (null, "");
        }

        if (
            !Uri.TryCreate(address, UriKind.Absolute, out var uri)
            || uri.Scheme is not ("mqtt" or "mqtts")
            || uri.Host.Length == 0
            || uri.UserInfo.Length > 0
            || uri.AbsolutePath.AsSpan().ContainsAny('+', '#')
        )
        {
            return (null, Say.Of("guard.mqtt_address", address));
        }

        var password = read("HEAPWRIGHT_MQTT_PASSWORD");
        if (read("HEAPWRIGHT_MQTT_PASSWORD_FILE") is { Length: > 0 } file)
        {
            try
            {
                password = File.ReadAllText(file).TrimEnd('\r', '\n');
            }
            catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
            {
                return (null, Say.Of("guard.mqtt_password_file", file, problem.Message));
            }
        }

        var encrypted = uri.Scheme == "mqtts";
        var prefix = Uri.UnescapeDataString(uri.AbsolutePath).Trim('/');
        return (
            new MqttSettings(
                uri.Host,
                uri.Port > 0 ? uri.Port
                    : encrypted ? UsualEncryptedPort
                    : UsualPort,
                encrypted,
                prefix.Length == 0 ? "heapwright" : prefix,
                read("HEAPWRIGHT_MQTT_USER"),
                password
            ),
            ""
        );
    }
}
