using Heapwright.App.Sites;
using NodaTime;

namespace Heapwright.App.Tests.Sites;

public sealed class SiteSeasonTests
{
    [Theory]
    [InlineData("Europe/London", 11, "autumn")]
    [InlineData("Europe/London", 12, "winter")]
    [InlineData("America/Chicago", 5, "spring")]
    [InlineData("Australia/Sydney", 11, "spring")]
    [InlineData("Australia/Sydney", 1, "summer")]
    [InlineData("Australia/Sydney", 8, "winter")]
    [InlineData("Africa/Nairobi", 11, null)]
    [InlineData("UTC", 11, null)]
    [InlineData("Nowhere/AtAll", 11, null)]
    public void Season_OfADayAtAPlace_IsThatOfItsSideOfTheEquator(
        string zone,
        int month,
        string? season
    ) => Assert.Equal(season, SiteSeason.Of(new LocalDate(2026, month, 15), zone));
}
