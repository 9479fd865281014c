using Heapwright.Core.FinishedCompost;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.Tests.FinishedCompost;

/// <summary>What a flask, seeds and pots say.</summary>
public class HomeTestTests
{
    private static readonly PotTestNeeds Needs = new(Pots: 3, Days: 21, LeafSets: 3);

    [Fact]
    public void Flask_HighestOverTheRoom_IsTheRise()
    {
        var test = Flask((0, 20), (2, 41), (4, 46), (6, 38));

        Assert.Equal(Spread.Exact(26), test.Rise);
        Assert.Equal(6, test.Days);
        Assert.False(test.StillRising);
        Assert.False(test.OnlyFell);
    }

    [Fact]
    public void Flask_RoomReadEachTime_CountsAgainstItsOwnRoom()
    {
        var test = new SelfHeatingTest
        {
            Readings = [new(0, 20, 20), new(1, 30, 25), new(2, 29, 18), new(3, 26, 20)],
        };

        // 29 over 18, not 30 over 25.
        Assert.Equal(Spread.Exact(11), test.Rise);
    }

    [Fact]
    public void Flask_StoppedWhileRising_SaysSo() =>
        Assert.True(Flask((0, 20), (1, 28), (2, 35)).StillRising);

    [Fact]
    public void Flask_OnlyCooling_SaysSo() =>
        Assert.True(Flask((0, 35), (1, 30), (2, 24)).OnlyFell);

    [Fact]
    public void Flask_ColderThanTheRoom_HasNoRise() =>
        Assert.Equal(Spread.Exact(0), Flask((0, 15), (3, 17)).Rise);

    [Fact]
    public void Flask_WithoutARoom_CannotTell() =>
        Assert.Null(new SelfHeatingTest { Readings = [new(0, 45, null)] }.Rise);

    [Fact]
    public void Flask_UncertainRoom_TurnsTheRiseRound()
    {
        var test = new SelfHeatingTest
        {
            HighestCelsius = Spread.Exact(45),
            RoomCelsius = Spread.Of(18, 20, 23),
        };

        Assert.Equal(Spread.Of(22, 25, 27), test.Rise);
    }

    // GI = G L / 100 (Zucconi 1981, from memory): 80 % of 100 % and 15 mm of 20 mm give 80 · 75 / 100 = 60.
    [Fact]
    public void Seeds_CountsAndRoots_GiveTheIndex()
    {
        var test = new SeedTest(new SeedCount(20, 16, 15), new SeedCount(20, 20, 20));

        Assert.Equal(80, test.GerminationPercent!.Value, 1e-9);
        Assert.Equal(75, test.RootPercent!.Value, 1e-9);
        Assert.Equal(60, test.GerminationIndex!.Value, 1e-9);
    }

    [Fact]
    public void Seeds_OtherNumbersInTheControl_AreComparedAsShares() =>
        Assert.Equal(
            100,
            new SeedTest(new SeedCount(10, 8, null), new SeedCount(50, 40, null))
                .GerminationPercent!
                .Value,
            1e-9
        );

    [Fact]
    public void Seeds_NothingCameUp_IsAnIndexOfNought()
    {
        var test = new SeedTest(new SeedCount(20, 0, null), new SeedCount(20, 19, 20));

        Assert.Equal(0, test.GerminationIndex);
    }

    [Fact]
    public void Seeds_WithoutAControlThatGrew_CannotTell()
    {
        Assert.Null(new SeedTest(new SeedCount(20, 16, 15), null).GerminationPercent);
        Assert.Null(
            new SeedTest(new SeedCount(20, 16, 15), new SeedCount(20, 0, null)).GerminationPercent
        );
        Assert.Null(
            new SeedTest(new SeedCount(20, 16, 15), new SeedCount(20, 20, null)).GerminationIndex
        );
    }

    // The binomial deviation of 18 of 20 is about 6.7 points on either side, 9.5 together; 5th to 95th is 3.3 of them.
    [Fact]
    public void Seeds_FewCounted_AreLessSureThanMany()
    {
        static double Width(int times)
        {
            var test = new SeedTest(
                new SeedCount(20 * times, 18 * times, null),
                new SeedCount(20 * times, 18 * times, null)
            );
            var spread = Spread.OfSample(test.CountedGermination(new SamplePoints(1)));
            return spread.High - spread.Low;
        }

        Assert.InRange(Width(1), 25, 45);
        Assert.InRange(Width(1) / Width(100), 7, 13); // a hundred times the seeds, a tenth of the width
    }

    [Theory]
    [InlineData(20, 21)]
    [InlineData(20, -1)]
    [InlineData(0, 0)]
    public void Seeds_ThatCannotBe_AreRefused(double sown, double germinated) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new SeedCount(sown, germinated, null));

    [Theory]
    [InlineData(3, 1, 3, 0, 10.0, null, PotTestVerdict.Harmed)]
    [InlineData(3, 0, 3, 0, 21.0, null, PotTestVerdict.Clean)]
    [InlineData(3, 0, 3, 0, 20.9, null, PotTestVerdict.TooEarly)]
    [InlineData(3, 0, 3, 0, 15.0, 3.0, PotTestVerdict.Clean)]
    [InlineData(3, 0, 3, 0, 30.0, 2.0, PotTestVerdict.TooEarly)]
    [InlineData(3, 0, 3, 0, null, null, PotTestVerdict.TooEarly)]
    [InlineData(2, 0, 3, 0, 21.0, null, PotTestVerdict.TooFewPots)]
    [InlineData(3, 0, 2, 0, 21.0, null, PotTestVerdict.TooFewPots)]
    [InlineData(3, 0, 0, null, 21.0, null, PotTestVerdict.TooFewPots)]
    [InlineData(3, 3, 0, null, 21.0, null, PotTestVerdict.NoControl)]
    [InlineData(3, 3, 3, 1, 21.0, null, PotTestVerdict.ControlHarmed)]
    [InlineData(3, null, 3, 0, 21.0, null, PotTestVerdict.TooEarly)]
    public void Pots_Grown_SayWhatTheyShow(
        int pots,
        int? harmed,
        int control,
        int? controlHarmed,
        double? days,
        double? leaves,
        PotTestVerdict verdict
    ) =>
        Assert.Equal(
            verdict,
            new PotTest(pots, harmed, control, controlHarmed, days, leaves).Verdict(Needs)
        );

    private static SelfHeatingTest Flask(params (double Day, double Celsius)[] readings) =>
        new()
        {
            RoomCelsius = Spread.Exact(20),
            Readings = [.. readings.Select(r => new SelfHeatingReading(r.Day, r.Celsius, null))],
        };
}
