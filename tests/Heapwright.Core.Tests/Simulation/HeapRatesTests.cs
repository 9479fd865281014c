using System.Globalization;
using System.Runtime.Intrinsics;
using Heapwright.Core.Bins;
using Heapwright.Core.Simulation;

namespace Heapwright.Core.Tests.Simulation;

/// <summary>The vector code against plain double, member by member, for heaps in every kind of state.</summary>
public class HeapRatesTests
{
    // The functions of VectorMath err by up to 6e-11. A rate is compared with the sum of the sizes of its terms; a
    // humidity near the limit of 0.8 atmospheres multiplies the error of its pressure by 5, and five such factors in
    // a row would still stay below this.
    private const double Share = 1e-9;

    [Theory]
    [InlineData(BinShape.Box, 1)]
    [InlineData(BinShape.Ring, 1)]
    [InlineData(BinShape.Cone, 1)]
    [InlineData(BinShape.Windrow, 1)]
    [InlineData(BinShape.Box, 2)]
    [InlineData(BinShape.Windrow, 2)]
    public void Rates_AnyState_AreThoseOfTheReference(BinShape shape, int refinement)
    {
        var grid = RandomHeaps.Grid(shape, refinement);
        var differences = new Differences(Share);
        for (var seed = 0; seed < (refinement == 1 ? 60 : 10); seed++)
        {
            Compare(grid, seed, differences, MoistAirOfTheKernel);
        }

        Assert.True(differences.Compared > 10_000);
        Assert.True(differences.Worst <= Share, differences.Where);
    }

    [Fact]
    public void Rates_MagnusFormulaItself_DifferByTheErrorOfThePolynomialOnly()
    {
        // The polynomial for the saturation pressure is good to 3e-5; through humidity near its limit times 5.
        const double Limit = 1.5e-4;
        var differences = new Differences(Limit);
        var grid = RandomHeaps.Grid(BinShape.Box, 1);
        for (var seed = 0; seed < 40; seed++)
        {
            Compare(grid, seed, differences, MoistAir.SaturationPressure);
        }

        Assert.True(differences.Worst <= Limit, differences.Where);
    }

    [Fact]
    public void SaturationPressure_FromMinus40To100_IsWithin3e5OfMagnus()
    {
        for (var i = 0; i <= 14_000; i++)
        {
            var t = -40 + (i / 100.0);
            Assert.InRange(
                (MoistAirOfTheKernel(t) / MoistAir.SaturationPressure(t)) - 1,
                -3e-5,
                3e-5
            );
        }
    }

    [Fact]
    public void Rates_OneMember_DoNotDependOnTheOthers()
    {
        var random = new Random(5);
        var grid = RandomHeaps.Grid(BinShape.Box, 1);
        var block = BlockOf(grid, random);
        var crowd = RatesOf(block);
        var other = BlockOf(grid, new Random(6));
        // The third member of the one among the members of the other, under the same sky.
        var lone = new HeapBlock(grid, block.Weather) { Wall = block.Wall, Cover = block.Cover };
        block.TurnedOn.CopyTo(lone.TurnedOn, 0);
        Mingle(lone.State, other.State, block.State, 2);
        Mingle(lone.Fixed, other.Fixed, block.Fixed, 2);
        Mingle(lone.Parameters, other.Parameters, block.Parameters, 2);
        Mingle(lone.CarbonShare, other.CarbonShare, block.CarbonShare, 2);
        var alone = RatesOf(lone);
        for (var i = 0; i < crowd.Length; i++)
        {
            Assert.Equal(crowd[i][2], alone[i][2]);
        }

        Assert.NotEqual(crowd[0][3], alone[0][3]);
    }

    private static void Mingle(
        Vector512<double>[] target,
        Vector512<double>[] most,
        Vector512<double>[] one,
        int lane
    )
    {
        for (var i = 0; i < target.Length; i++)
        {
            target[i] = most[i].WithElement(lane, one[i][lane]);
        }
    }

    private static HeapBlock BlockOf(HeapGrid grid, Random random)
    {
        var block = new HeapBlock(grid, RandomHeaps.Sky(random))
        {
            Wall = Surroundings.Walls.Values.ElementAt(random.Next(Surroundings.Walls.Count)),
            Cover = Surroundings.Covers.Values.ElementAt(random.Next(Surroundings.Covers.Count)),
        };
        RandomHeaps.Fill(block, grid, random);
        return block;
    }

    private static Vector512<double>[] RatesOf(HeapBlock block, double time = 7.3)
    {
        var rate = new Vector512<double>[block.StateCount];
        block.Rates(time, block.State, rate);
        return rate;
    }

    private static void Compare(
        HeapGrid grid,
        int seed,
        Differences differences,
        Func<double, double> saturation
    )
    {
        var random = new Random(seed);
        var block = BlockOf(grid, random);
        var time = random.NextDouble() * 20;
        var rate = RatesOf(block, time);
        var reference = new ReferenceHeap(grid, block.Wall, block.Cover)
        {
            SaturationPressure = saturation,
        };
        block.TurnedOn.CopyTo(reference.TurnedOn, 0);
        for (var lane = 0; lane < HeapBlock.Lanes; lane++)
        {
            Take(block.Parameters, lane, reference.Parameters);
            Take(block.Fixed, lane, reference.Fixed);
            Take(block.CarbonShare, lane, reference.CarbonShare);
            var state = new double[block.StateCount];
            Take(block.State, lane, state);
            reference.Evaluate(time, state, block.Weather.At(time), block.Weather.Ground);
            for (var i = 0; i < state.Length; i++)
            {
                differences.Note(
                    rate[i][lane],
                    reference.Rate[i],
                    reference.Gross[i],
                    () => NameOf(grid, i) + " seed " + seed + " lane " + lane
                );
            }
        }
    }

    private static string NameOf(HeapGrid grid, int i) =>
        i < grid.Zones * HeapBlock.PerZone
            ? "zone " + (i / HeapBlock.PerZone) + " state " + (i % HeapBlock.PerZone)
            : ((Total)(i - (grid.Zones * HeapBlock.PerZone))).ToString();

    private static void Take(Vector512<double>[] from, int lane, double[] to)
    {
        for (var i = 0; i < to.Length; i++)
        {
            to[i] = from[i][lane];
        }
    }

    private static double MoistAirOfTheKernel(double celsius) =>
        MoistAir.SaturationPressure(Vector512.Create(celsius))[0];

    private sealed class Differences(double share)
    {
        public double Worst { get; private set; }

        public string Where { get; private set; } = "";

        public int Compared { get; private set; }

        public void Note(double value, double expected, double scale, Func<string> where)
        {
            Compared++;
            var difference = value == expected ? 0 : Math.Abs(value - expected) / scale;
            if (!(difference <= Worst))
            {
                Worst = double.IsNaN(difference) ? double.PositiveInfinity : difference;
                Where = string.Create(
                    CultureInfo.InvariantCulture,
                    $"{where()}: {value:R}, expected {expected:R}, apart {difference:G3} of its terms, {share:G3} allowed"
                );
            }
        }
    }
}
