using NodaTime;

namespace Heapwright.App.Sites;

/// <summary>
/// Days as people at a site count them: by the calendar on its wall, not in lots of 24 hours. A day on which the
/// clocks change has 23 or 25 hours and is still one day.
/// </summary>
public static class SiteDays
{
    /// <summary>The moment a clock shows.</summary>
    /// <param name="clock">The clock.</param>
    public static Instant Now(this TimeProvider clock)
    {
        ArgumentNullException.ThrowIfNull(clock);
        return Instant.FromDateTimeOffset(clock.GetUtcNow());
    }

    /// <summary>The day on which a moment falls.</summary>
    /// <param name="moment">The moment.</param>
    /// <param name="zone">The site's zone.</param>
    public static LocalDate DayOf(Instant moment, DateTimeZone zone) => moment.InZone(zone).Date;

    /// <summary>How many midnights lie between two moments at the site.</summary>
    /// <param name="from">The earlier moment.</param>
    /// <param name="to">The later moment.</param>
    /// <param name="zone">The site's zone.</param>
    public static int Between(Instant from, Instant to, DateTimeZone zone) =>
        Since(DayOf(from, zone), to, zone);

    /// <summary>How many days ago a day was; negative for a day to come.</summary>
    /// <param name="day">The day, in the site's zone.</param>
    /// <param name="now">The moment now.</param>
    /// <param name="zone">The site's zone.</param>
    public static int Since(LocalDate day, Instant now, DateTimeZone zone) =>
        Period.DaysBetween(day, DayOf(now, zone));
}
