using NodaTime;
using NodaTime.TimeZones;

namespace Heapwright.App.Sites;

/// <summary>The season at a site, from its day and from where its time zone lies.</summary>
public static class SiteSeason
{
    private const double Tropic = 23.5; // degrees of latitude; between the tropics the four seasons mean little

    /// <summary>The season in the words of <c>diagnose</c>; null where it cannot be told.</summary>
    /// <param name="day">The day at the site.</param>
    /// <param name="zoneId">The id of its zone, such as <c>Europe/London</c>.</param>
    public static string? Of(LocalDate day, string zoneId)
    {
        var source = TzdbDateTimeZoneSource.Default;
        var known = source.CanonicalIdMap.TryGetValue(zoneId, out var id) ? id : zoneId;
        var place = source.ZoneLocations?.FirstOrDefault(l =>
            l.ZoneId == zoneId || l.ZoneId == known
        );
        if (place is null || Math.Abs(place.Latitude) < Tropic)
        {
            return null;
        }

        // Seasons as gardeners count them, in whole months; south of the equator half a year later.
        var month = place.Latitude > 0 ? day.Month : ((day.Month + 5) % 12) + 1;
        return month switch
        {
            12 or 1 or 2 => "winter",
            3 or 4 or 5 => "spring",
            6 or 7 or 8 => "summer",
            _ => "autumn",
        };
    }
}
