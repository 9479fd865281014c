using System.Diagnostics;
using System.Globalization;
using Heapwright.Core.Simulation;

namespace Heapwright.Benchmarks.Heaps;

/// <summary>Members of the usual heap: written to a file for the peers, and simulated on one thread.</summary>
internal static class HeapMembers
{
    private const double Magic = 20261125;

    /// <summary>Writes members, and the rates at three times of their lives for a check.</summary>
    public static void Export(string path, int members, int refinement)
    {
        var question = HeapQuestions.Usual(members, refinement, 0.003);
        var (grid, blocks) = Blocks(question);
        using var file = new BinaryWriter(File.Create(path));
        void Put(params ReadOnlySpan<double> values)
        {
            foreach (var value in values)
            {
                file.Write(value);
            }
        }

        double[] checks = [0, 2.5, 20];
        Put(Magic, grid.Rings, grid.Layers, grid.HasSides ? 1 : 0, members, HeapParameters.Count);
        Put(checks.Length, question.Days, BlockRun.LookEvery);
        // The mean lies a quarter of a day from the warmest hour, 15:00.
        var mean = question.Weather.At((21 - 12) / 24.0);
        var swing = question.Weather.At((15 - 12) / 24.0).Air - mean.Air;
        Put(mean.Air, mean.Wind, mean.Rain, mean.Humidity, mean.Sun, swing, 12);
        Put(question.Weather.Ground);
        foreach (var b in new[] { question.Walls, question.Cover })
        {
            Put(b.Resistance, b.Openness, b.Evaporation, b.Shed);
        }

        Put(grid.PlanArea);
        Put(grid.TopArea);
        Put(grid.FacePerimeter);
        for (var r = 0; r < grid.Rings; r++)
        {
            Put((grid.RingEdges[r + 1] - grid.Centroid[r]) * grid.HalfWidth);
        }

        for (var r = 0; r < grid.Rings; r++)
        {
            Put(
                r == grid.Rings - 1
                    ? 0
                    : (grid.Centroid[r + 1] - grid.RingEdges[r + 1]) * grid.HalfWidth
            );
        }

        var core = new double[grid.Zones];
        foreach (var (zone, weight) in Regions.Core(grid))
        {
            core[zone] = weight;
        }

        Put(core);
        Put(grid.LeastDistance);
        var states = grid.Zones * HeapBlock.PerZone;
        for (var b = 0; b < blocks.Length; b++)
        {
            var block = blocks[b];
            var start = (System.Runtime.Intrinsics.Vector512<double>[])block.State.Clone();
            var seen = new List<(double, double[][], double[][])>();
            var rate = new System.Runtime.Intrinsics.Vector512<double>[block.StateCount];
            var time = 0.0;
            foreach (var check in checks)
            {
                if (check > time)
                {
                    new BlockRun(question with { Days = check - time }, grid, block, []).ToEnd(
                        CancellationToken.None
                    );
                    time = check;
                }

                block.Rates(check, block.State, rate);
                seen.Add((check, ByLane(block.State, states), ByLane(rate, states)));
            }

            var first = ByLane(start, states);
            for (var lane = 0; lane < HeapBlock.Lanes; lane++)
            {
                if ((b * HeapBlock.Lanes) + lane >= members)
                {
                    break;
                }

                Put(ByLane(block.Parameters, HeapParameters.Count)[lane]);
                Put(ByLane(block.CarbonShare, 3)[lane]);
                Put(ByLane(block.Fixed, grid.Zones * HeapBlock.FixedPerZone)[lane]);
                Put(first[lane]);
                foreach (var (at, state, rates) in seen)
                {
                    Put(at);
                    Put(state[lane]);
                    Put(rates[lane]);
                }
            }
        }
    }

    /// <summary>Simulates on this thread and writes the temperature of the core, [member][look].</summary>
    public static void Time(string path, int members, int refinement, double tolerance)
    {
        // So that everything is compiled at its best before the clock starts.
        var warming = Stopwatch.StartNew();
        while (warming.Elapsed < TimeSpan.FromSeconds(1.5))
        {
            Simulate(16, refinement, tolerance, out _);
        }

        const int Repeats = 5;
        var seconds = 0.0;
        BlockRun[] runs = [];
        for (var round = 0; round < Repeats; round++)
        {
            runs = Simulate(members, refinement, tolerance, out var once);
            seconds += once / Repeats;
        }

        var core = Regions.Core(Blocks(HeapQuestions.Usual(members, refinement, tolerance)).Grid);
        using var file = new BinaryWriter(File.Create(path));
        for (var member = 0; member < members; member++)
        {
            var (block, lane) = Math.DivRem(member, HeapBlock.Lanes);
            foreach (var look in runs[block].Looks)
            {
                file.Write(core.Sum(c => c.Weight * look.Celsius[c.Zone][lane]));
            }
        }

        var steps = runs.Sum(r => r.Steps) / (double)runs.Length;
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"ours {tolerance} {members} {seconds:R} {steps:F0} {(3 * steps) + 1:F0}"
            )
        );
    }

    private static BlockRun[] Simulate(
        int members,
        int refinement,
        double tolerance,
        out double seconds
    )
    {
        var question = HeapQuestions.Usual(members, refinement, tolerance);
        var (grid, blocks) = Blocks(question);
        var runs = blocks.Select(b => new BlockRun(question, grid, b, [])).ToArray();
        using var process = Process.GetCurrentProcess();
        var before = process.TotalProcessorTime;
        foreach (var run in runs)
        {
            run.ToEnd(CancellationToken.None);
        }

        process.Refresh();
        seconds = (process.TotalProcessorTime - before).TotalSeconds;
        return runs;
    }

    private static (HeapGrid Grid, HeapBlock[] Blocks) Blocks(SimulationQuestion question)
    {
        var heap = new PreparedHeap(
            question,
            HeapBuilder.MixtureFor(question.Mixture, question.Members, question.Seed)
        );
        return (heap.Grid, [.. Enumerable.Range(0, heap.Blocks).Select(heap.Block)]);
    }

    private static double[][] ByLane(
        System.Runtime.Intrinsics.Vector512<double>[] vectors,
        int count
    )
    {
        var lanes = new double[HeapBlock.Lanes][];
        for (var lane = 0; lane < lanes.Length; lane++)
        {
            lanes[lane] = [.. vectors.Take(count).Select(v => v[lane])];
        }

        return lanes;
    }
}
