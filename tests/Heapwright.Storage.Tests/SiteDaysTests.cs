using Heapwright.App.Sites;
using NodaTime;

namespace Heapwright.Storage.Tests;

/// <summary>
/// The clocks change at 01:00 UTC on 29 March and 25 October 2026 in London, and at 02:00 local time on 8 March and
/// 1 November 2026 in New York.
/// </summary>
public sealed class SiteDaysTests
{
    [Theory]
    // London, spring: 23:30 on the 28th to 00:10 on the 30th are 23 h 40 min and two midnights.
    [InlineData("Europe/London", "2026-03-28T23:30:00", "2026-03-30T00:10:00", 2)]
    // The day of 23 hours from midnight to midnight is one day.
    [InlineData("Europe/London", "2026-03-29T00:00:00", "2026-03-30T00:00:00", 1)]
    [InlineData("Europe/London", "2026-03-29T00:30:00", "2026-03-29T23:59:00", 0)]
    // Autumn: the day of 25 hours is one day, and 24 h 30 min within it are none.
    [InlineData("Europe/London", "2026-10-25T00:00:00", "2026-10-26T00:00:00", 1)]
    [InlineData("Europe/London", "2026-10-25T00:10:00", "2026-10-25T23:50:00", 0)]
    [InlineData("America/New_York", "2026-03-07T23:30:00", "2026-03-09T00:10:00", 2)]
    [InlineData("America/New_York", "2026-03-08T00:00:00", "2026-03-09T00:00:00", 1)]
    [InlineData("America/New_York", "2026-11-01T00:00:00", "2026-11-02T00:00:00", 1)]
    [InlineData("America/New_York", "2026-11-01T00:10:00", "2026-11-01T23:50:00", 0)]
    [InlineData("America/New_York", "2026-02-28T12:00:00", "2026-12-28T12:00:00", 303)]
    public void Between_AroundTheClockChange_CountsMidnights(
        string zoneId,
        string from,
        string to,
        int days
    )
    {
        var zone = DateTimeZoneProviders.Tzdb[zoneId];

        Assert.Equal(days, SiteDays.Between(Moment(from, zone), Moment(to, zone), zone));
    }

    [Theory]
    // 23:30 UTC on the 28th is still the 28th in London before the change, and half past midnight after it.
    [InlineData("Europe/London", "2026-03-28T23:30:00Z", "2026-03-28")]
    [InlineData("Europe/London", "2026-03-29T23:30:00Z", "2026-03-30")]
    [InlineData("Europe/London", "2026-10-24T23:30:00Z", "2026-10-25")]
    [InlineData("Europe/London", "2026-10-25T23:30:00Z", "2026-10-25")]
    // 04:30 UTC is 23:30 of the day before in New York in winter, and half past midnight in summer.
    [InlineData("America/New_York", "2026-03-08T04:30:00Z", "2026-03-07")]
    [InlineData("America/New_York", "2026-03-09T04:30:00Z", "2026-03-09")]
    [InlineData("America/New_York", "2026-11-01T04:30:00Z", "2026-11-01")]
    [InlineData("America/New_York", "2026-11-02T04:30:00Z", "2026-11-01")]
    public void DayOf_AroundTheClockChange_IsTheDayOnTheWall(
        string zoneId,
        string moment,
        string day
    )
    {
        var zone = DateTimeZoneProviders.Tzdb[zoneId];
        var instant = NodaTime.Text.InstantPattern.General.Parse(moment).Value;

        Assert.Equal(
            NodaTime.Text.LocalDatePattern.Iso.Parse(day).Value,
            SiteDays.DayOf(instant, zone)
        );
    }

    private static Instant Moment(string local, DateTimeZone zone) =>
        NodaTime
            .Text.LocalDateTimePattern.GeneralIso.Parse(local)
            .Value.InZoneStrictly(zone)
            .ToInstant();
}
