using System.Runtime.Intrinsics;
using Heapwright.Core.Bins;
using Heapwright.Numerics.Odes;

namespace Heapwright.Core.Simulation;

/// <summary>Runs one block from building to the last day: integrates, does what is to be done, looks and keeps the books.</summary>
internal sealed class BlockRun
{
    /// <summary>Days between looks.</summary>
    public const double LookEvery = 0.125;

    private const double Longest = 0.25; // days

    private readonly SimulationQuestion question;
    private HeapGrid grid;
    private readonly HeapBlock block;
    private readonly LockStepIntegrator integrator;
    private readonly (int Zone, double Weight)[] core;
    private readonly Parcels? parcels;
    private readonly HeapMatter[][] additions; // [added event][lane]
    private readonly List<HeapEvent> events;
    private double left = 1; // share of the dry matter at the start that was not taken away
    private readonly double[] dryAdded = new double[HeapBlock.Lanes];
    private readonly double[] carbonIn = new double[HeapBlock.Lanes];
    private readonly double[] nitrogenIn = new double[HeapBlock.Lanes];
    private readonly double[] waterIn = new double[HeapBlock.Lanes];
    private readonly double[] heatIn = new double[HeapBlock.Lanes];
    private Vector512<double> leastMass = Vector512.Create(double.PositiveInfinity);
    private int added;
    private double lastNoted;
    private double time;
    private int next;

    public BlockRun(
        SimulationQuestion question,
        HeapGrid grid,
        HeapBlock block,
        HeapMatter[][] additions
    )
    {
        this.question = question;
        this.grid = grid;
        this.block = block;
        this.additions = additions;
        core = Regions.Core(grid);
        block.Tolerance = question.Tolerance;
        integrator = new LockStepIntegrator(block, ButcherTableau.BogackiShampine);
        events = [.. question.Events.Where(e => e.Day <= question.Days).OrderBy(e => e.Day)];
        if (question.FollowParcels)
        {
            parcels = new Parcels(grid, SurfacesOf(), question.Seed);
        }
    }

    // A branch: the same heap at the same moment, to go another way from here on.
    private BlockRun(BlockRun from, SimulationQuestion question, HeapMatter[][] additions)
    {
        this.question = question;
        this.additions = additions;
        grid = from.grid;
        core = from.core;
        block = from.block.Copy();
        integrator = new LockStepIntegrator(block, ButcherTableau.BogackiShampine);
        events = [.. question.Events.Where(e => e.Day <= question.Days).OrderBy(e => e.Day)];
        parcels = from.parcels?.Copy();
        left = from.left;
        from.dryAdded.CopyTo(dryAdded, 0);
        from.carbonIn.CopyTo(carbonIn, 0);
        from.nitrogenIn.CopyTo(nitrogenIn, 0);
        from.waterIn.CopyTo(waterIn, 0);
        from.heatIn.CopyTo(heatIn, 0);
        leastMass = from.leastMass;
        lastNoted = from.lastNoted;
        time = from.time;
        Looks = [.. from.Looks];
    }

    /// <summary>What was seen, in order of time.</summary>
    public List<HeapLook> Looks { get; } = [];

    /// <summary>The block as it stands.</summary>
    public HeapBlock Block => block;

    /// <summary>What was followed of hygiene, or null.</summary>
    public Parcels? Parcels => parcels;

    /// <summary>The steps taken.</summary>
    public long Steps => integrator.Steps;

    /// <summary>Dry matter put in, additions included and what was taken away left out, kg.</summary>
    public double DryIn(int lane) => (Looks[0].DryOf(lane) * left) + dryAdded[lane];

    /// <summary>What was put in, additions included and what was taken away left out, kg.</summary>
    public (double Carbon, double Nitrogen, double Water) PutIn(int lane) =>
        (carbonIn[lane], nitrogenIn[lane], waterIn[lane]);

    /// <summary>C:N of the whole as it stands.</summary>
    public double Ratio(int lane)
    {
        var (carbon, nitrogen, _, _) = Contents(lane);
        return carbon / nitrogen;
    }

    /// <summary>The least mass of any pool, water or nitrogen of a zone at any look, kg.</summary>
    public double LeastMass
    {
        get
        {
            var least = double.PositiveInfinity;
            for (var lane = 0; lane < HeapBlock.Lanes; lane++)
            {
                least = Math.Min(least, leastMass[lane]);
            }

            return least;
        }
    }

    /// <summary>The same heap as it stands, to go another way from here on.</summary>
    /// <param name="other">The question of the branch: what is done from here on, and to which day.</param>
    /// <param name="matter">Shape [added event of the branch][lane].</param>
    public BlockRun Branch(SimulationQuestion other, HeapMatter[][] matter) =>
        new(this, other, matter);

    /// <summary>Runs to the last day.</summary>
    /// <param name="cancellation">Gives up.</param>
    public void ToEnd(CancellationToken cancellation)
    {
        if (Looks.Count == 0)
        {
            for (var lane = 0; lane < HeapBlock.Lanes; lane++)
            {
                (carbonIn[lane], nitrogenIn[lane], waterIn[lane], heatIn[lane]) = Contents(lane);
            }

            Look(time);
        }

        var look = 0;
        while (true)
        {
            cancellation.ThrowIfCancellationRequested();
            var did = false;
            while (next < events.Count && events[next].Day <= time)
            {
                Do(events[next++]);
                did = true;
            }

            if (did)
            {
                integrator.Restart();
                Look(time);
            }

            if (time >= question.Days)
            {
                break;
            }

            while (look * LookEvery <= time + 1e-9)
            {
                look++;
            }

            var to = Math.Min(look * LookEvery, question.Days);
            if (next < events.Count && events[next].Day < to)
            {
                to = events[next].Day;
            }

            integrator.Advance(block.State, time, to, 0.005, Longest);
            time = to;
            Look(time);
        }
    }

    /// <summary>What is left unaccounted for in a lane: water, carbon and nitrogen in kg, heat in percent of that made.</summary>
    public (double Water, double Carbon, double Nitrogen, double HeatPercent) Unaccounted(int lane)
    {
        var (carbon, nitrogen, water, heat) = Contents(lane);
        double T(Total total) => block.Of(total, lane);
        var w =
            water
            - waterIn[lane]
            - T(Total.WaterIn)
            - T(Total.WaterMade)
            + T(Total.VapourOut)
            + T(Total.DrainedOut);
        var c = carbon - carbonIn[lane] + T(Total.CarbonOut);
        var n = nitrogen - nitrogenIn[lane] + T(Total.AmmoniaOut) + T(Total.NitrogenDrained);
        var h =
            heat
            - heatIn[lane]
            - T(Total.HeatMade)
            - T(Total.WaterHeatIn)
            + T(Total.MatterHeatOut)
            + T(Total.LatentOut)
            + T(Total.SurfaceOut)
            + T(Total.AirOut);
        var scale = Math.Max(Math.Abs(T(Total.HeatMade)), Math.Abs(T(Total.SurfaceOut)));
        return (w, c, n, 100 * h / Math.Max(scale, 1));
    }

    private (double Carbon, double Nitrogen, double Water, double Heat) Contents(int lane)
    {
        var (carbon, nitrogen, water, heat) = (0.0, 0.0, 0.0, 0.0);
        for (var z = 0; z < grid.Zones; z++)
        {
            var fast = block.Of(z, HeapBlock.Fast, lane);
            var slow = block.Of(z, HeapBlock.Slow, lane);
            var lignin = block.Of(z, HeapBlock.Lignin, lane);
            carbon +=
                (block.CarbonShare[0][lane] * fast)
                + (block.CarbonShare[1][lane] * slow)
                + (block.CarbonShare[2][lane] * lignin);
            nitrogen +=
                (block.FixedOf(z, HeapBlock.FastNitrogen, lane) * fast)
                + (block.FixedOf(z, HeapBlock.SlowNitrogen, lane) * slow)
                + (block.FixedOf(z, HeapBlock.LigninNitrogen, lane) * lignin)
                + block.Of(z, HeapBlock.Mineral, lane)
                + block.Of(z, HeapBlock.Microbe, lane);
            water += block.Of(z, HeapBlock.Water, lane);
            heat += block.Of(z, HeapBlock.Heat, lane);
        }

        return (carbon, nitrogen, water, heat);
    }

    private void Look(double now)
    {
        block.Look(now);
        var celsius = block.Celsius.ToArray();
        var dry = block.Dry.ToArray();
        var (fast, water, height, volume) = (
            Vector512<double>.Zero,
            Vector512<double>.Zero,
            Vector512<double>.Zero,
            Vector512<double>.Zero
        );
        for (var z = 0; z < grid.Zones; z++)
        {
            fast += block.State[HeapBlock.At(z, HeapBlock.Fast)];
            water += block.State[HeapBlock.At(z, HeapBlock.Water)];
            var (_, ring) = Math.DivRem(z, grid.Rings);
            volume += block.Thickness[z] * grid.PlanArea[ring];
            if (ring == 0)
            {
                height += block.Thickness[z];
            }

            for (var s = HeapBlock.Fast; s <= HeapBlock.Microbe; s++)
            {
                leastMass = Vector512.Min(leastMass, block.State[HeapBlock.At(z, s)]);
            }
        }

        var oxygen = Vector512<double>.Zero;
        foreach (var (z, weight) in core)
        {
            oxygen += block.State[HeapBlock.At(z, HeapBlock.Oxygen)] * weight;
        }

        Looks.Add(
            new HeapLook(now, celsius, dry, fast, water, oxygen, height, volume) { Left = left }
        );
        if (parcels is not null)
        {
            var air = Vector512.Create(block.Weather.At(now).Air) + block.AirOffset;
            parcels.Note(celsius, air, block.Weather.Ground, now - lastNoted);
            lastNoted = now;
        }
    }

    private void Do(HeapEvent what)
    {
        switch (what)
        {
            case Moved move:
                Turn(move);
                Settle(move);
                break;
            case Turned turn:
                Turn(turn);
                break;
            case Split split:
                Keep(1 - split.Share);
                break;
            case Watered water:
                Water(water);
                break;
            case Added:
                Add();
                break;
            case Covered cover:
                block.Cover = cover.Cover;
                break;
        }
    }

    private void Turn(Turned turn)
    {
        var share = Shifting.Turn(grid, turn);
        for (var lane = 0; lane < HeapBlock.Lanes; lane++)
        {
            block.Move(share, lane);
            for (var z = 0; z < grid.Zones; z++)
            {
                if (Shifting.IsTurned(grid, turn.Part, z))
                {
                    block.Air(z, lane, block.AirAt(time, lane));
                }
            }
        }

        for (var z = 0; z < grid.Zones; z++)
        {
            if (Shifting.IsTurned(grid, turn.Part, z))
            {
                block.TurnedOn[z] = time;
            }
        }

        parcels?.Move(share);
    }

    // Walled places differ in their floor and walls; a free heap keeps its outline.
    private void Settle(Moved move)
    {
        block.Wall = move.Walls ?? block.Wall;
        if (move.Bin is { Shape: BinShape.Box or BinShape.Ring } bin && grid.HasSides)
        {
            grid = grid.On(bin);
            block.StandOn(grid);
        }
    }

    private void Keep(double share)
    {
        block.Keep(share);
        left *= share;
        foreach (var sums in new[] { dryAdded, carbonIn, nitrogenIn, waterIn, heatIn })
        {
            for (var lane = 0; lane < HeapBlock.Lanes; lane++)
            {
                sums[lane] *= share;
            }
        }
    }

    private void Water(Watered water)
    {
        Span<double> byLayer = stackalloc double[grid.Layers];
        Shifting.WaterByLayer(grid, byLayer);
        for (var z = 0; z < grid.Zones; z++)
        {
            var (layer, ring) = Math.DivRem(z, grid.Rings);
            var litres = water.Litres * byLayer[layer] * grid.PlanArea[ring] / grid.PlanArea.Sum();
            for (var lane = 0; lane < HeapBlock.Lanes; lane++)
            {
                block.Pour(z, lane, litres, Math.Max(block.AirAt(time, lane), 5));
            }
        }
    }

    private void Add()
    {
        var matter = additions[added++];
        var floor = grid.PlanArea.Sum();
        var fresh = new double[grid.Rings];
        for (var lane = 0; lane < HeapBlock.Lanes; lane++)
        {
            var portion = HeapBuilder.Portion.Of(block, lane, matter[lane]);
            var bulk = double.IsFinite(matter[lane].Filled)
                ? matter[lane].Filled
                    * block.ParameterOf(HeapParameter.BuiltVolume, lane)
                    / portion.Dry
                : block.FixedOf(grid.Zones - 1, HeapBlock.Bulk, lane);
            var before = Contents(lane);
            var celsius = block.AirAt(time, lane);
            for (var r = 0; r < grid.Rings; r++)
            {
                var z = grid.Zone(r, grid.Layers - 1);
                var part = portion.Times(grid.PlanArea[r] / floor);
                var old = block.DryOf(z, lane);
                block.Add(z, lane, part, bulk, celsius);
                fresh[r] += part.Dry / (old + part.Dry) / HeapBlock.Lanes;
            }

            var after = Contents(lane);
            dryAdded[lane] += portion.Dry;
            carbonIn[lane] += after.Carbon - before.Carbon;
            nitrogenIn[lane] += after.Nitrogen - before.Nitrogen;
            waterIn[lane] += after.Water - before.Water;
            heatIn[lane] += after.Heat - before.Heat;
        }

        for (var r = 0; r < grid.Rings; r++)
        {
            parcels?.Freshen(grid.Zone(r, grid.Layers - 1), fresh[r]);
        }

        Relayer();
    }

    // After an addition the layers are drawn anew at their usual shares of the height.
    private void Relayer()
    {
        block.Look(time);
        var mean = new double[grid.Zones, grid.Zones];
        for (var lane = 0; lane < HeapBlock.Lanes; lane++)
        {
            var share = Shifting.Relayer(grid, block.Thickness, lane);
            block.Move(share, lane);
            for (var to = 0; to < grid.Zones; to++)
            {
                for (var from = 0; from < grid.Zones; from++)
                {
                    mean[to, from] += share[to, from] / HeapBlock.Lanes;
                }
            }
        }

        parcels?.Move(mean);
    }

    // How much of a zone's excess over the air is left at its surface, with usual conductivity and transfer.
    private Parcels.Surfaces SurfacesOf()
    {
        const double Conductivity = 0.4;
        const double Transfer = 9.5;
        static double Left(double resistance, double half) =>
            resistance / (resistance + (half / Conductivity));
        var side = (1 - grid.Centroid[^1]) * grid.HalfWidth;
        var top = grid.Height * (1 - grid.LayerEdges[^2]) / 2;
        var bottom = grid.Height * grid.LayerEdges[1] / 2;
        return new Parcels.Surfaces(
            Left(question.Walls.Resistance + (1 / Transfer), side),
            Left(question.Cover.Resistance + (1 / Transfer), top),
            Left(question.Parameters.Usual(HeapParameter.GroundResistance), bottom)
        );
    }
}
