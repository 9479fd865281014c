using Heapwright.App.Diary;
using Heapwright.Core.Readings;
using NodaTime;

namespace Heapwright.App.Outlooks;

/// <summary>What was noted of late and must be said before anybody opens a heap.</summary>
public static class HeapAlarms
{
    /// <summary>The code of the caution on smoke.</summary>
    public const string Smoke = "smoke_keep_away";

    /// <summary>The code of the caution on a heap that may burn.</summary>
    public const string Fire = "fire_in_heap";

    /// <summary>The code for a core so hot that most of what works in it dies off.</summary>
    public const string TooHot = "too_hot";

    /// <summary>A core read from here on is too hot, °C (Haug 1993 and common practice: above about 70).</summary>
    public const double TooHotCelsius = 70;

    private const double FireCelsius = 75;
    private const double HotCelsius = 65;
    private static readonly string[] Burning = ["smoke", "glow", "flames", "char"];
    private static readonly Duration Lately = Duration.FromDays(2);

    /// <summary>The codes of the cautions, the gravest first.</summary>
    /// <param name="record">The heap with its diary.</param>
    /// <param name="now">The present.</param>
    public static IEnumerable<string> Of(HeapRecord record, Instant now)
    {
        ArgumentNullException.ThrowIfNull(record);
        var since = (now - Lately).ToDateTimeOffset();
        var lately = record.Diary.Standing.Select(s => s.Entry).Where(e => e.At >= since).ToArray();
        if (
            lately
                .OfType<SignEntry>()
                .Any(s =>
                    s.Smell.Contains("smoke")
                    || s.See.Any(w => Burning.Contains(w, StringComparer.Ordinal))
                )
        )
        {
            yield return Smoke;
        }

        // Here a reading of which the unit is in question is left out, but one that is only high is not.
        var hottest = lately
            .OfType<TemperatureEntry>()
            .Where(r => record.Believed(r.Id))
            .Select(r => r.Temperature.DegreesCelsius)
            .DefaultIfEmpty(0)
            .Max();
        if (hottest >= FireCelsius)
        {
            yield return Fire;
        }
        else if (hottest >= HotCelsius)
        {
            yield return "hot_heap";
        }
    }

    /// <summary>What comes before every other advice: smoke, a heap that may burn, or one that is too hot; null for none.</summary>
    /// <param name="record">The heap with its diary.</param>
    /// <param name="lastCore">The last reading of its core that is believed; null for none.</param>
    /// <param name="now">The present.</param>
    public static string? Urgent(HeapRecord record, TemperatureEntry? lastCore, Instant now) =>
        Of(record, now).FirstOrDefault(code => code is Smoke or Fire)
        ?? (
            lastCore is not null
            && lastCore.At >= (now - Lately).ToDateTimeOffset()
            && lastCore.Temperature.DegreesCelsius >= TooHotCelsius
                ? TooHot
                : null
        );
}
