using Heapwright.Core.Hygiene;

namespace Heapwright.Core.Tests.Hygiene;

/// <summary>The accounting of days, gaps and turns, on rules written by hand.</summary>
public class RuleJudgeTests
{
    private static readonly double[] FiveTurns = [3, 6, 9, 12, 15];

    [Fact]
    public void Days_EnoughByReadingsButNotByElapsedTime_Depends()
    {
        var finding = RuleJudge.Judge(
            Logs.Windrow,
            Logs.Daily(1, 15, 58, FiveTurns),
            ProcessKind.Windrow
        );

        Assert.Equal(RuleVerdict.Depends, finding.Verdict);
        Assert.Equal(15, finding.Shown.LongestRunDays);
        Assert.Equal(14, finding.Shown.LongestElapsedDays, 1e-9);
        Assert.Equal(
            [RuleVerdict.Met, RuleVerdict.NotMet],
            finding
                .Ways.Where(w => w is { FollowsOn: true, LateTurn: false })
                .Select(w => w.Verdict)
        );
    }

    [Theory]
    [InlineData(14, RuleVerdict.NotMet)]
    [InlineData(15, RuleVerdict.Depends)]
    [InlineData(16, RuleVerdict.Met)]
    public void Days_AtTheEdge(int days, RuleVerdict verdict) =>
        Assert.Equal(
            verdict,
            Logs.Verdict(Logs.Windrow, Logs.Daily(1, days, 55, [2, 4, 6, 8, 10]))
        );

    [Fact]
    public void Days_WithADip_DependOnWhetherTheyMustFollowOneAnother()
    {
        var log = HeatLog.Of(
            Enumerable.Range(1, 20).Select(d => Logs.At(d, d == 10 ? 54 : 58)),
            FiveTurns.Select(Logs.Turn)
        );
        var consecutive = Logs.Windrow.Period! with { Order = DayOrder.Consecutive };
        var any = consecutive with { Order = DayOrder.Any };

        Assert.Equal(RuleVerdict.Depends, Logs.Verdict(Logs.Windrow, log));
        Assert.Equal(RuleVerdict.NotMet, Logs.Verdict(Logs.Rule(consecutive), log));
        Assert.Equal(RuleVerdict.Met, Logs.Verdict(Logs.Rule(any), log));
    }

    [Fact]
    public void MissingDays_ThatWouldBeEnough_CannotBeTold()
    {
        var log = HeatLog.Of(
            Enumerable.Range(1, 16).Where(d => d is not (5 or 11)).Select(d => Logs.At(d, 60)),
            FiveTurns.Select(Logs.Turn)
        );

        var finding = RuleJudge.Judge(Logs.Windrow, log, ProcessKind.Windrow);

        Assert.Equal(RuleVerdict.CannotTell, finding.Verdict);
        Assert.Equal(14, finding.Shown.DaysAtOrAbove);
        Assert.Equal(5, finding.Shown.LongestRunDays);
    }

    [Fact]
    public void MissingDays_ThatWouldNotBeEnough_AreNotMet() =>
        Assert.Equal(
            RuleVerdict.NotMet,
            Logs.Verdict(
                Logs.Windrow,
                HeatLog.Of(
                    Enumerable.Range(1, 14).Where(d => d != 5).Select(d => Logs.At(d, 60)),
                    FiveTurns.Select(Logs.Turn)
                )
            )
        );

    [Theory]
    [InlineData(36.0, RuleVerdict.Met)]
    [InlineData(36.1, RuleVerdict.Depends)]
    public void Interval_AtItsLongest_BreaksARunOrNot(double hours, RuleVerdict verdict)
    {
        // Ten readings 24 hours apart, one interval of about a day and a half, ten more.
        var first = Enumerable.Range(0, 10).Select(d => Logs.At(d + 0.25, 60));
        var second = Enumerable.Range(0, 10).Select(d => Logs.At(9.25 + (hours / 24) + d, 60));
        var log = HeatLog.Of(first.Concat(second), [.. FiveTurns.Select(Logs.Turn)]);

        Assert.Equal(verdict, Logs.Verdict(Logs.Windrow, log));
    }

    [Theory]
    [InlineData(new double[] { 3, 6, 9, 12 }, RuleVerdict.NotMet)]
    [InlineData(new double[] { 1, 6, 9, 12, 20 }, RuleVerdict.Met)]
    [InlineData(new double[] { 3, 6, 9, 12, 21 }, RuleVerdict.Depends)]
    [InlineData(new double[] { 3, 6, 9, 12, 22 }, RuleVerdict.NotMet)]
    [InlineData(new double[] { 0, 6, 9, 12, 15 }, RuleVerdict.NotMet)]
    [InlineData(null, RuleVerdict.CannotTell)]
    public void Turns_CountWithinThePeriod(double[]? turns, RuleVerdict verdict) =>
        Assert.Equal(verdict, Logs.Verdict(Logs.Windrow, Logs.Daily(1, 20, 58, turns)));

    [Theory]
    [InlineData(new double[] { 2, 4, 6 }, RuleVerdict.Met)]
    [InlineData(new double[] { 2, 3.9, 6 }, RuleVerdict.NotMet)]
    [InlineData(new double[] { 2.5, 4.4, 6.4 }, RuleVerdict.Depends)]
    [InlineData(new double[] { 2, 3, 4, 6 }, RuleVerdict.Met)]
    public void Turns_TooCloseToEachOther_DoNotCount(double[] turns, RuleVerdict verdict)
    {
        var rule = Logs.Rule(
            new HeatPeriod
            {
                Band = new HeatBand(60),
                Days = 8,
                Order = DayOrder.Open,
                Turns = 3,
                TurnsApartDays = 2,
            }
        );

        Assert.Equal(verdict, Logs.Verdict(rule, Logs.Daily(1, 9, 60, turns)));
    }

    [Fact]
    public void ColdestProbe_Counts()
    {
        var log = HeatLog.Of(
            Enumerable
                .Range(1, 20)
                .SelectMany(d => new[] { Logs.At(d, 65), Logs.At(d, 48, "edge") }),
            FiveTurns.Select(Logs.Turn)
        );

        var finding = RuleJudge.Judge(Logs.Windrow, log, ProcessKind.Windrow);

        Assert.Equal(RuleVerdict.NotMet, finding.Verdict);
        Assert.Equal(0, finding.Shown.DaysAtOrAbove);
    }

    [Fact]
    public void Probe_NotReadForDays_LeavesThemUnknown()
    {
        var log = HeatLog.Of(
            Enumerable
                .Range(1, 20)
                .SelectMany(d =>
                    d <= 10 ? new[] { Logs.At(d, 65), Logs.At(d, 60, "edge") } : [Logs.At(d, 65)]
                ),
            FiveTurns.Select(Logs.Turn)
        );

        Assert.Equal(RuleVerdict.CannotTell, Logs.Verdict(Logs.Windrow, log));
    }

    [Fact]
    public void Process_OfAnotherKind_IsNotApplicable() =>
        Assert.Equal(
            RuleVerdict.NotApplicable,
            RuleJudge.Judge(Logs.Windrow, Logs.Daily(1, 30, 60, FiveTurns), ProcessKind.Bin).Verdict
        );

    [Theory]
    [InlineData(4.0, RuleVerdict.Met)]
    [InlineData(3.0 + (50.0 / 60), RuleVerdict.NotMet)]
    public void Spell_WithinThePeriod_AtItsEdge(double hours, RuleVerdict verdict)
    {
        var rule = Logs.Rule(
            new HeatPeriod { Band = new HeatBand(40), Days = 5 },
            new HeatSpell(new HeatBand(55, MustExceed: true), 4)
        );
        var log = HeatLog.Of(
            [
                .. Enumerable.Range(1, 6).Select(d => Logs.At(d, 42)),
                Logs.At(3.4, 56),
                Logs.At(3.4 + (hours / 24), 56),
            ],
            null
        );

        Assert.Equal(verdict, Logs.Verdict(rule, log));
    }

    [Theory]
    [InlineData(45.0, RuleVerdict.NotMet)]
    [InlineData(45.1, RuleVerdict.Met)]
    public void Mean_MustBeExceeded(double mean, RuleVerdict verdict)
    {
        // Days in turn 3 degrees below and above the mean: over 16 of them it is the mean.
        var rule = Logs.Rule(
            new HeatPeriod
            {
                Band = new HeatBand(40, MustExceed: true),
                Days = 16,
                MeanAboveCelsius = 45,
            }
        );
        var log = HeatLog.Of(
            Enumerable.Range(1, 16).Select(d => Logs.At(d, mean + (d % 2 == 0 ? 3 : -3))),
            null
        );

        Assert.Equal(verdict, RuleJudge.Judge(rule, log, ProcessKind.Windrow).Ways[0].Verdict);
    }

    [Theory]
    [InlineData(15, RuleVerdict.Met)]
    [InlineData(14, RuleVerdict.Depends)]
    [InlineData(10, RuleVerdict.NotMet)]
    public void Mean_OfAPartOfALongRun_IsEnough(int warmDays, RuleVerdict verdict)
    {
        // 200 days at 41 °C, in their midst some at 46: only over those days is the mean above 45.
        var rule = Logs.Rule(
            new HeatPeriod
            {
                Band = new HeatBand(40, MustExceed: true),
                Days = 14,
                MeanAboveCelsius = 45.9,
            }
        );
        var log = HeatLog.Of(
            Enumerable
                .Range(1, 200)
                .Select(d => Logs.At(d, d > 90 && d <= 90 + warmDays ? 46 : 41)),
            null
        );

        Assert.Equal(verdict, Logs.Verdict(rule, log));
    }

    // Found by the property that a cold reading improves nothing: a day left out within 36 hours.
    [Fact]
    public void Mean_OfAStretchWithADayLeftOut_DoesNotReachBackToTheBeginning()
    {
        var rule = Logs.Rule(
            new HeatPeriod
            {
                Band = new HeatBand(40, MustExceed: true),
                Days = 4,
                MeanAboveCelsius = 60,
            }
        );
        var log = HeatLog.Of(
            [Logs.At(0, 39), Logs.At(3.9, 78), Logs.At(5.3, 71), Logs.At(9.4, 64)],
            null
        );

        var elapsed = RuleJudge.Judge(rule, log, ProcessKind.Windrow).Ways[1];
        Assert.Equal(1.4, elapsed.Days, 1e-9);
        Assert.Equal(RuleVerdict.CannotTell, elapsed.Verdict);
    }
}
