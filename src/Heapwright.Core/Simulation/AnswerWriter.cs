namespace Heapwright.Core.Simulation;

/// <summary>Gathers what the blocks saw into series and milestones by member.</summary>
internal static class AnswerWriter
{
    public static SimulationAnswer Write(
        SimulationQuestion question,
        HeapGrid grid,
        BlockRun[] runs,
        double volume,
        double trodden
    )
    {
        var members = question.Members;
        var looks = runs[0].Looks;
        var n = looks.Count;
        double[][] Series() => [.. Enumerable.Range(0, n).Select(_ => new double[members])];
        var answer = new SimulationAnswer
        {
            Question = question,
            Grid = grid,
            Days = [.. looks.Select(l => l.Day)],
            Core = Series(),
            Mean = Series(),
            Outer = Series(),
            Moisture = Series(),
            Oxygen = Series(),
            Height = Series(),
            Zones =
            [
                .. Enumerable
                    .Range(0, n)
                    .Select(_ =>
                        Enumerable.Range(0, grid.Zones).Select(_ => new double[members]).ToArray()
                    ),
            ],
            Milestones = new HeapMilestones[members],
            Books = new HeatAndBalance[members],
            Trodden = trodden,
            BuiltVolume = volume,
            WaterIn = new double[members],
            CarbonIn = new double[members],
            NitrogenIn = new double[members],
            FinalRatio = new double[members],
            LeastMass = runs.Min(r => r.LeastMass),
            Steps = runs.Sum(r => r.Steps),
        };
        var core = Regions.Core(grid);
        var outer = Regions.Outer(grid);
        Parallel.For(
            0,
            runs.Length,
            b =>
            {
                for (var lane = 0; lane < HeapBlock.Lanes; lane++)
                {
                    var member = (b * HeapBlock.Lanes) + lane;
                    if (member < members)
                    {
                        Member(answer, runs[b], lane, member, core, outer);
                    }
                }
            }
        );
        return answer;
    }

    private static void Member(
        SimulationAnswer answer,
        BlockRun run,
        int lane,
        int member,
        (int Zone, double Weight)[] core,
        (int Zone, double Weight)[] outer
    )
    {
        for (var i = 0; i < run.Looks.Count; i++)
        {
            var look = run.Looks[i];
            var (mean, dry) = (0.0, 0.0);
            for (var z = 0; z < look.Celsius.Length; z++)
            {
                var t = look.Celsius[z][lane];
                answer.Zones[i][z][member] = t;
                mean += t * look.Dry[z][lane];
                dry += look.Dry[z][lane];
            }

            answer.Mean[i][member] = mean / dry;
            answer.Core[i][member] = core.Sum(z => z.Weight * look.Celsius[z.Zone][lane]);
            answer.Outer[i][member] = outer.Sum(z => z.Weight * look.Celsius[z.Zone][lane]);
            answer.Moisture[i][member] = 100 * look.Water[lane] / (look.Water[lane] + dry);
            answer.Oxygen[i][member] = 100 * Math.Max(look.Oxygen[lane], 0); // strays below by its tolerance
            answer.Height[i][member] = 100 * look.Height[lane];
        }

        answer.Milestones[member] = Milestones(answer, run, lane, member);
        answer.Books[member] = Books(run, lane);
        answer.FinalRatio[member] = run.Ratio(lane);
        (answer.CarbonIn[member], answer.NitrogenIn[member], answer.WaterIn[member]) = run.PutIn(
            lane
        );
    }

    private static HeapMilestones Milestones(
        SimulationAnswer answer,
        BlockRun run,
        int lane,
        int member
    )
    {
        var (peak, peakDay, above) = (double.NegativeInfinity, 0.0, 0.0);
        for (var i = 0; i < answer.Days.Length; i++)
        {
            var t = answer.Core[i][member];
            if (t > peak)
            {
                (peak, peakDay) = (t, answer.Days[i]);
            }

            if (i > 0)
            {
                above += TimeAbove(
                    answer.Core[i - 1][member],
                    t,
                    55,
                    answer.Days[i] - answer.Days[i - 1]
                );
            }
        }

        var first = run.Looks[0];
        var last = run.Looks[^1];
        var (dryIn, nitrogenIn) = (run.DryIn(lane), run.PutIn(lane).Nitrogen);
        return new HeapMilestones(
            FirstAbove(answer, member, 49),
            FirstAbove(answer, member, 55),
            FirstAbove(answer, member, 60),
            peak,
            peakDay,
            above,
            run.Parcels?.HeldPercent()[lane] ?? double.NaN,
            run.Parcels?.DosedPercent()[lane] ?? double.NaN,
            100 * (dryIn - last.DryOf(lane)) / dryIn,
            100
                * (run.Block.Of(Total.AmmoniaOut, lane) + run.Block.Of(Total.NitrogenDrained, lane))
                / nitrogenIn,
            100 * last.Volume[lane] / first.Volume[lane]
        );
    }

    private static double FirstAbove(SimulationAnswer answer, int member, double celsius)
    {
        for (var i = 0; i < answer.Days.Length; i++)
        {
            var t = answer.Core[i][member];
            if (t >= celsius)
            {
                if (i == 0)
                {
                    return answer.Days[0];
                }

                var before = answer.Core[i - 1][member];
                return answer.Days[i - 1]
                    + ((answer.Days[i] - answer.Days[i - 1]) * (celsius - before) / (t - before));
            }
        }

        return double.NaN;
    }

    // The part of an interval in which a straight line is at or above a level.
    private static double TimeAbove(double from, double to, double level, double days) =>
        from >= level && to >= level ? days
        : from < level && to < level ? 0
        : days * (Math.Max(from, to) - level) / Math.Abs(to - from);

    private static HeatAndBalance Books(BlockRun run, int lane)
    {
        var latent = run.Block.Of(Total.LatentOut, lane);
        var surface = run.Block.Of(Total.SurfaceOut, lane);
        var air = run.Block.Of(Total.AirOut, lane);
        var all = latent + surface + air;
        var (w, c, n, h) = run.Unaccounted(lane);
        return new HeatAndBalance(
            100 * latent / all,
            100 * surface / all,
            100 * air / all,
            w,
            c,
            n,
            h
        );
    }
}
