using Heapwright.Core.Hygiene;

namespace Heapwright.Core.Tests.Hygiene;

public class HeatLogTests
{
    [Theory]
    [InlineData(36.0, false)]
    [InlineData(36.1, true)]
    public void Interval_Over36Hours_IsAGap(double hours, bool gap)
    {
        // From 06:00 on, so that 36 hours reach into the next calendar day only.
        var log = HeatLog.Of([Logs.At(1.25, 60), Logs.At(1.25 + (hours / 24), 60)], turns: null);

        Assert.Equal(gap, log.Gaps().Any());
    }

    [Fact]
    public void Interval_WrittenInDecimals_Of36HoursIsNoGap() =>
        // 2.6 - 1.1 is 1.5 days but for the last bits.
        Assert.Empty(HeatLog.Of([Logs.At(1.1, 60), Logs.At(2.6, 60)], null).Gaps());

    [Fact]
    public void CalendarDay_LeftOut_IsAGapEvenWithin36Hours()
    {
        var gap = Assert.Single(HeatLog.Of([Logs.At(1.9, 60), Logs.At(3.1, 60)], null).Gaps());

        Assert.Equal(1, gap.MissingDays);
        Assert.Equal(28.8, gap.Hours, 1e-9);
    }

    [Fact]
    public void Probe_ThatBeginsLateAndEndsEarly_HasGapsAtBothEnds()
    {
        var log = HeatLog.Of(
            [
                .. Enumerable.Range(1, 10).Select(d => Logs.At(d, 60)),
                Logs.At(4, 60, "edge"),
                Logs.At(5, 60, "edge"),
            ],
            null
        );

        Assert.Equal([("edge", 3), ("edge", 5)], log.Gaps().Select(g => (g.Probe, g.MissingDays)));
    }

    [Fact]
    public void Record_WithoutReadings_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => HeatLog.Of([], null));
}
