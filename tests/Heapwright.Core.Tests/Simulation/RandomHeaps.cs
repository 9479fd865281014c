using Heapwright.Core.Bins;
using Heapwright.Core.Simulation;
using UnitsNet;

namespace Heapwright.Core.Tests.Simulation;

/// <summary>Blocks of heaps in states of every kind: frozen to too hot, bone dry to drowned, with and without air.</summary>
internal static class RandomHeaps
{
    public static HeapGrid Grid(BinShape shape, int refinement)
    {
        static Length M(double metres) => Length.FromMeters(metres);
        var bin = shape switch
        {
            BinShape.Box => Bin.Box(M(1.2), M(0.9), M(1)),
            BinShape.Ring => Bin.Ring(M(1.1), M(1.2)),
            BinShape.Cone => Bin.Cone(M(2.4), M(1.3)),
            _ => Bin.Windrow(M(6), M(2.5), M(1.4)),
        };
        return HeapGrid.Of(bin, bin.Volume.CubicMeters * 0.9, refinement);
    }

    public static Weather Sky(Random random) =>
        Weather.Steady(
            new WeatherMoment(
                Between(random, -15, 40),
                random.Next(3) == 0 ? 0 : Between(random, 0, 8),
                random.Next(2) == 0 ? 0 : Between(random, 0, 40),
                Between(random, 0.2, 1),
                random.Next(2) == 0 ? 0 : Between(random, 0, 900)
            ),
            Between(random, 0, 8)
        );

    /// <summary>Fills all members of a block.</summary>
    public static void Fill(HeapBlock block, HeapGrid grid, Random random)
    {
        for (var z = 0; z < grid.Zones; z++)
        {
            block.TurnedOn[z] = random.Next(2) == 0 ? 0 : Between(random, 0, 10);
        }

        for (var lane = 0; lane < HeapBlock.Lanes; lane++)
        {
            for (var p = 0; p < HeapParameters.Count; p++)
            {
                var prior = ShippedParameters.Table.Prior((HeapParameter)p);
                block.ParameterOf((HeapParameter)p, lane) = Between(random, prior.Low, prior.High);
            }

            for (var pool = 0; pool < 3; pool++)
            {
                block.CarbonShare[pool] = System.Runtime.Intrinsics.Vector512.WithElement(
                    block.CarbonShare[pool],
                    lane,
                    Between(random, 0.35, 0.55)
                );
            }

            for (var z = 0; z < grid.Zones; z++)
            {
                FillZone(block, grid, z, lane, random);
            }
        }
    }

    private static void FillZone(HeapBlock block, HeapGrid grid, int z, int lane, Random random)
    {
        ref double Fixed(int which) => ref block.FixedOf(z, which, lane);
        ref double State(int which) => ref block.Of(z, which, lane);
        var bulk = Math.Exp(Between(random, Math.Log(0.003), Math.Log(0.02))); // m³/kg
        var dry = grid.ZoneVolume(z) / bulk;
        Fixed(HeapBlock.Bulk) = bulk;
        Fixed(HeapBlock.Ash) = dry * Between(random, 0.01, 0.5);
        Fixed(HeapBlock.Settling) = Between(random, 0, 0.6);
        Fixed(HeapBlock.Size) = Between(random, 0.3, 2);
        Fixed(HeapBlock.Passage) = Between(random, 0.05, 3);
        Fixed(HeapBlock.FastNitrogen) = Between(random, 0, 0.14);
        Fixed(HeapBlock.SlowNitrogen) = Between(random, 0, 0.05);
        Fixed(HeapBlock.LigninNitrogen) = Between(random, 0, 0.02);
        var rest = dry - Fixed(HeapBlock.Ash);
        var fast = random.Next(5) == 0 ? 1e-6 : Between(random, 0.01, 0.5);
        State(HeapBlock.Fast) = rest * fast;
        Fixed(HeapBlock.FastAtStart) = State(HeapBlock.Fast) * Between(random, 1, 3);
        State(HeapBlock.Slow) = rest * (1 - fast) * 0.6;
        State(HeapBlock.Lignin) = rest * (1 - fast) * 0.4;
        State(HeapBlock.Water) = dry * Math.Exp(Between(random, Math.Log(0.02), Math.Log(5)));
        State(HeapBlock.Mineral) = dry * (random.Next(5) == 0 ? 0 : Between(random, 0, 0.01));
        State(HeapBlock.Microbe) = dry * Between(random, 0, 0.01);
        State(HeapBlock.Activity) = random.Next(5) == 0 ? 0.001 : Between(random, 0, 1);
        State(HeapBlock.Oxygen) = random.Next(5) == 0 ? 0 : Between(random, 0, 0.2095);
        var solid = dry * block.ParameterOf(HeapParameter.SolidHeat, lane);
        State(HeapBlock.Heat) =
            random.Next(8) == 0
                ? -Between(random, 0, 334_000 * State(HeapBlock.Water)) // part of the water frozen
                : HeapBlock.HeatOf(Between(random, -15, 85), solid, State(HeapBlock.Water));
    }

    private static double Between(Random random, double low, double high) =>
        low + ((high - low) * random.NextDouble());
}
