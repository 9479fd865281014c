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

        if (hottest >= HotCelsius)
        {
            yield return "hot_heap";
        }
    }
}
