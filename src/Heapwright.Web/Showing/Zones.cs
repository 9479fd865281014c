using NodaTime;
using NodaTime.TimeZones;

namespace Heapwright.Web.Showing;

/// <summary>The time zones to choose from.</summary>
public static class Zones
{
    /// <summary>Every zone in which people live, by its id, and the zone of this machine.</summary>
    public static IReadOnlyList<(string Value, string Text)> Options { get; } =
    [
        .. (TzdbDateTimeZoneSource.Default.ZoneLocations ?? [])
            .Select(z => z.ZoneId)
            .Append("UTC")
            .Append(Here.MachineZone().Id)
            .Where(id => DateTimeZoneProviders.Tzdb.Ids.Contains(id, StringComparer.Ordinal))
            .Distinct(StringComparer.Ordinal)
            .Order(StringComparer.Ordinal)
            .Select(id => (id, id.Replace('_', ' '))),
    ];
}
