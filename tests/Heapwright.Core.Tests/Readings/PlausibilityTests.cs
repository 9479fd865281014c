using Heapwright.Core.Readings;
using UnitsNet;
using static Heapwright.Core.Tests.Readings.Entries;

namespace Heapwright.Core.Tests.Readings;

/// <summary>Worked examples. What is plausible is common practice, no source; the conversions are exact.</summary>
public sealed class PlausibilityTests
{
    [Theory]
    [InlineData(20)]
    [InlineData(58)]
    [InlineData(71)]
    [InlineData(-3)]
    public void Reading_Usual_IsPlausible(double celsius) =>
        Assert.Equal(PlausibilityVerdict.Fine, Judge(Read(9, 240, celsius)));

    [Theory]
    // 140 °F is 60 °C, 131 °F is 55 °C, 95 °F is 35 °C.
    [InlineData(140, 60)]
    [InlineData(131, 55)]
    [InlineData(95, 35)]
    public void Celsius_ThatFitsAsFahrenheit_IsAsked(double typed, double meant)
    {
        var verdict = Judge(Read(9, 48, typed));

        Assert.Equal(PlausibilityStatus.Asks, verdict.Status);
        Assert.Equal(meant, verdict.Suggested!.Value.DegreesCelsius, 9);
        Assert.Equal("readings.perhaps_fahrenheit", verdict.Reasons[0].Code);
    }

    [Fact]
    public void Fahrenheit_58AfterReadingsNear58Celsius_IsAsked()
    {
        var verdict = Judge(ReadF(9, 72, 58), Read(1, 24, 52), Read(2, 48, 57));

        Assert.Equal(PlausibilityStatus.Asks, verdict.Status);
        Assert.Equal(58, verdict.Suggested!.Value.DegreesCelsius, 9);
    }

    [Fact]
    public void Fahrenheit_58InTheFirstDays_IsAskedWithoutEarlierReadings() =>
        Assert.Equal(PlausibilityStatus.Asks, Judge(ReadF(9, 72, 58)).Status);

    [Theory]
    // On the day of building, and after a slow fall, 58 °F (14.4 °C) is what a cold heap has.
    [InlineData(6, double.NaN)]
    [InlineData(1000, 16)]
    public void Fahrenheit_58OfAColdHeap_IsPlausible(double hours, double before) =>
        Assert.Equal(
            PlausibilityStatus.Plausible,
            (
                double.IsNaN(before)
                    ? Judge(ReadF(9, hours, 58))
                    : Judge(ReadF(9, hours, 58), Read(1, hours - 48, before))
            ).Status
        );

    [Theory]
    [InlineData(200)]
    [InlineData(1999)]
    [InlineData(-60)]
    [InlineData(-40)]
    public void Reading_NoHeapHas_IsImpossible(double celsius) =>
        Assert.Equal(PlausibilityStatus.Impossible, Judge(Read(9, 48, celsius)).Status);

    [Fact]
    public void HeatNearBurning_AfterHotReadings_IsDoubtedAndNotTakenForFahrenheit()
    {
        var verdict = Judge(Read(9, 72, 90), Read(1, 60, 84));

        Assert.Equal(PlausibilityStatus.Doubtful, verdict.Status);
        Assert.Equal("readings.very_hot", verdict.Reasons[0].Code);
    }

    [Theory]
    // 12 °C are free and 2.5 °C for each hour: in 2 h 17 °C, in 24 h 72 °C.
    [InlineData(2, 20, 36.9, true)]
    [InlineData(2, 20, 37.1, false)]
    [InlineData(24, 12, 70, true)]
    // Down 12 °C and 1.2 °C for each hour: in 5 h 18 °C.
    [InlineData(5, 60, 42.1, true)]
    [InlineData(5, 60, 41.9, false)]
    public void Jump_AtItsLimit_IsDoubtedBeyond(
        double hours,
        double from,
        double to,
        bool plausible
    )
    {
        var verdict = Judge(Read(9, 48 + hours, to), Read(1, 48, from));

        Assert.Equal(
            plausible ? PlausibilityStatus.Plausible : PlausibilityStatus.Doubtful,
            verdict.Status
        );
        if (!plausible)
        {
            Assert.Equal("readings.jump", verdict.Reasons[0].Code);
        }
    }

    [Fact]
    public void Jump_WithATurnBetween_IsPlausible() =>
        Assert.Equal(
            PlausibilityStatus.Plausible,
            Judge(Read(9, 53, 30), Read(1, 48, 60), Turn(2, 50)).Status
        );

    [Fact]
    public void Jump_ToAnotherSpot_IsPlausible() =>
        Assert.Equal(
            PlausibilityStatus.Plausible,
            Judge(Read(9, 49, 30, ProbeSpot.Side), Read(1, 48, 60)).Status
        );

    [Fact]
    public void SameWarmValue_OverThreeDays_IsDoubted()
    {
        DiaryEntry[] before = [Read(1, 24, 50), Read(2, 48, 50), Read(3, 72, 50)];

        Assert.Equal("readings.stuck", Judge(Read(9, 96, 50), before).Reasons[0].Code);
        Assert.Equal(PlausibilityStatus.Plausible, Judge(Read(9, 95, 50), before).Status);
        Assert.Equal(PlausibilityStatus.Plausible, Judge(Read(9, 96, 50.2), before).Status);
    }

    [Fact]
    public void SameColdValue_OverThreeDays_IsDoubtedOnlyThroughATurn()
    {
        DiaryEntry[] before = [Read(1, 24, 18), Read(2, 48, 18), Read(3, 72, 18)];

        Assert.Equal(PlausibilityStatus.Plausible, Judge(Read(9, 96, 18), before).Status);
        Assert.Equal(
            "readings.stuck",
            Judge(Read(9, 96, 18), [.. before, Turn(4, 60)]).Reasons[0].Code
        );
    }

    [Theory]
    // 30 lost in 6 hours and 15 below the air: the probe is not in the heap.
    [InlineData(6, 35, 5, 20.0, PlausibilityStatus.Impossible)]
    // As far below the air, but it was cold before, or two days have gone, or nobody knows the air.
    [InlineData(6, 29, 5, 20.0, PlausibilityStatus.Doubtful)]
    [InlineData(48, 35, 5, 20.0, PlausibilityStatus.Doubtful)]
    [InlineData(6, 35, 5, null, PlausibilityStatus.Doubtful)]
    public void Reading_ThatFellFarBelowTheAirInADay_IsNotBelieved(
        double hours,
        double from,
        double to,
        double? air,
        PlausibilityStatus status
    )
    {
        var reading = Read(9, 48 + hours, to) with
        {
            Air = air is { } celsius ? Temperature.FromDegreesCelsius(celsius) : null,
        };

        Assert.Equal(status, Judge(reading, Read(1, 48, from)).Status);
        Assert.NotEqual(
            PlausibilityStatus.Impossible,
            Judge(reading, Read(1, 48, from), Turn(2, 49)).Status
        );
    }

    [Theory]
    [InlineData(9.9, false)]
    [InlineData(10.1, true)]
    public void Reading_ColderThanAir_IsDoubtedBeyondTenDegrees(double colder, bool doubted)
    {
        var reading = Read(9, 48, 25 - colder) with { Air = Temperature.FromDegreesCelsius(25) };

        Assert.Equal(
            doubted ? PlausibilityStatus.Doubtful : PlausibilityStatus.Plausible,
            Judge(reading).Status
        );
    }

    [Fact]
    public void Time_StillToComeOrBeforeBuilding_IsDoubted()
    {
        var ahead = Read(9, 48, 50) with { ReceivedAt = Built.AddHours(47.7) };

        Assert.Equal("readings.ahead_of_time", Judge(ahead).Reasons[0].Code);
        Assert.Equal("readings.before_built", Judge(Read(9, -1, 20)).Reasons[0].Code);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(2000.1)]
    [InlineData(-273.2)]
    public void Entry_WithoutATemperature_CannotExist(double celsius) =>
        Assert.ThrowsAny<ArgumentException>(() => Read(1, 1, celsius));

    private static PlausibilityVerdict Judge(
        TemperatureEntry reading,
        params DiaryEntry[] before
    ) => Plausibility.Judge(reading, ReadingHistory.Of(before, Built));
}
