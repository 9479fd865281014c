using System.Runtime.Intrinsics;
using Heapwright.Core.Bins;
using Heapwright.Core.Mixtures;
using Heapwright.Numerics.Sampling;

namespace Heapwright.Core.Simulation;

/// <summary>Fills blocks with what a heap is built of.</summary>
internal static class HeapBuilder
{
    // Beyond this density of the built heap over the loose one, treading no longer helps.
    private const double MostTrodden = 1.4;
    private const double MostNitrogen = 0.14; // kg per kg of a pool: protein holds 16 %

    // kg C per kg of the three pools, before they are brought to the carbon of the mixture: carbohydrate and lignin.
    private const double CarbohydrateCarbon = 0.45;
    private const double LigninCarbon = 0.55;

    /// <summary>The parameters of every member.</summary>
    /// <returns>Shape [parameter][member].</returns>
    public static double[][] Draw(HeapParameters parameters, int members, ulong seed)
    {
        var draws = new double[HeapParameters.Count][];
        var points = PointsFor(members, seed);
        var u = new double[points.Count];
        for (var p = 0; p < draws.Length; p++)
        {
            var parameter = (HeapParameter)p;
            if (members == 1)
            {
                draws[p] = [parameters.Usual(parameter)];
                continue;
            }

            var (block, dimension) = Math.DivRem(p, QuasiRandomSet.BlockSize);
            points
                .Block(
                    string.Create(
                        System.Globalization.CultureInfo.InvariantCulture,
                        $"heap parameters {block}"
                    )
                )
                .Fill(dimension, u);
            draws[p] = parameters.Prior(parameter).Sample(u, HeapParameters.Scale);
            if (parameter == HeapParameter.StartActivity)
            {
                for (var i = 0; i < u.Length; i++)
                {
                    draws[p][i] = Math.Min(draws[p][i], 1);
                }
            }
        }

        return draws;
    }

    /// <summary>A sample set with at least as many points as members.</summary>
    public static QuasiRandomSet PointsFor(int members, ulong seed) =>
        new((int)System.Numerics.BitOperations.RoundUpToPowerOf2((uint)members), seed);

    /// <summary>The mixture of all members.</summary>
    public static Mixture MixtureFor(MixtureQuestion question, int members, ulong seed) =>
        Mixture.Of(
            question with
            {
                PointCount = (int)System.Numerics.BitOperations.RoundUpToPowerOf2((uint)members),
                Seed = seed,
            }
        );

    /// <summary>The volume of a heap when built, m³, and by how much it was trodden in to fit.</summary>
    public static (double Volume, double Trodden) BuiltVolume(
        HeapMatter matter,
        Bin bin,
        double factor
    )
    {
        var loose = Untrodden(matter, factor);
        var least = Least(matter);
        var room = bin.Volume.CubicMeters;
        if (loose <= room)
        {
            return (loose, 1);
        }

        var pressed = Math.Max(Math.Max(room, loose / MostTrodden), least);
        return (pressed, loose / pressed);
    }

    /// <summary>
    /// The built volume of matter that need not be pressed to fit, m³: chopping, wetting and treading take from the air
    /// between the pieces.
    /// </summary>
    public static double Untrodden(HeapMatter matter, double factor)
    {
        var solid = AirSpace.SolidAndWaterVolume(matter.Balance) / 1000;
        return Math.Max(solid + ((matter.Filled - solid) * factor), Least(matter));
    }

    // Pieces and water with a twentieth of air.
    private static double Least(HeapMatter matter) =>
        AirSpace.SolidAndWaterVolume(matter.Balance) / 1000 / 0.95;

    /// <summary>Fills one lane of a block.</summary>
    public static void Fill(
        HeapBlock block,
        HeapGrid grid,
        int lane,
        HeapMatter matter,
        double volume,
        double celsius
    )
    {
        Portion whole = Portion.Of(block, lane, matter);
        var total = grid.Volume;
        for (var z = 0; z < grid.Zones; z++)
        {
            var share = grid.ZoneVolume(z) / total;
            Put(block, z, lane, whole, share, celsius);
            block.Of(z, HeapBlock.Activity, lane) = block.ParameterOf(
                HeapParameter.StartActivity,
                lane
            );
            block.Of(z, HeapBlock.Oxygen, lane) = HeapBlock.OutsideOxygen;
        }

        // The built volume counts its own load: the matter is given the bulk that presses down to that volume.
        var (matterVolume, gapsPerBulk) = Pressed(block, grid, lane);
        var bulk = (volume - matterVolume) / gapsPerBulk;
        for (var z = 0; z < grid.Zones; z++)
        {
            block.FixedOf(z, HeapBlock.Bulk, lane) = bulk;
        }
    }

    /// <summary>The carbon of the pools of one lane, so that it adds up to that of the mixture.</summary>
    public static void SetCarbon(HeapBlock block, int lane, HeapMatter matter)
    {
        var b = matter.Balance;
        var lignin = Math.Max(0, b.DryMass - b.Ash - b.FastMatter - b.SlowMatter);
        var plain = (CarbohydrateCarbon * (b.FastMatter + b.SlowMatter)) + (LigninCarbon * lignin);
        var scale = plain > 0 ? b.Carbon / plain : 1;
        for (var pool = 0; pool < 3; pool++)
        {
            block.CarbonShare[pool] = block
                .CarbonShare[pool]
                .WithElement(lane, scale * (pool == 2 ? LigninCarbon : CarbohydrateCarbon));
        }
    }

    private static void Put(
        HeapBlock block,
        int z,
        int lane,
        Portion whole,
        double share,
        double celsius
    )
    {
        block.Of(z, HeapBlock.Fast, lane) = whole.Fast * share;
        block.Of(z, HeapBlock.Slow, lane) = whole.Slow * share;
        block.Of(z, HeapBlock.Lignin, lane) = whole.Lignin * share;
        block.Of(z, HeapBlock.Water, lane) = whole.Water * share;
        block.Of(z, HeapBlock.Mineral, lane) = whole.Mineral * share;
        block.Of(z, HeapBlock.Microbe, lane) = whole.Microbe * share;
        block.Of(z, HeapBlock.Heat, lane) =
            HeapBlock.HeatOf(
                celsius,
                whole.Dry * block.ParameterOf(HeapParameter.SolidHeat, lane),
                whole.Water
            ) * share;
        block.FixedOf(z, HeapBlock.Ash, lane) = whole.Ash * share;
        block.FixedOf(z, HeapBlock.FastAtStart, lane) = whole.Fast * share;
        block.FixedOf(z, HeapBlock.FastNitrogen, lane) = whole.FastNitrogen;
        block.FixedOf(z, HeapBlock.SlowNitrogen, lane) = whole.SlowNitrogen;
        block.FixedOf(z, HeapBlock.LigninNitrogen, lane) = whole.LigninNitrogen;
        block.FixedOf(z, HeapBlock.Size, lane) = whole.Size;
        block.FixedOf(z, HeapBlock.Passage, lane) = whole.Passage;
        block.FixedOf(z, HeapBlock.Settling, lane) = whole.Settling;
    }

    // Volume is linear in bulk b: Σ m + (dry·b − m)/p with the matter m and the pressing p of each zone.
    private static (double Constant, double Slope) Pressed(HeapBlock block, HeapGrid grid, int lane)
    {
        var c = block.ParameterOf(HeapParameter.Compaction, lane);
        var half = block.ParameterOf(HeapParameter.CompactionLoad, lane);
        var (constant, slope) = (0.0, 0.0);
        for (var r = 0; r < grid.Rings; r++)
        {
            var stress = 0.0;
            for (var k = grid.Layers - 1; k >= 0; k--)
            {
                var z = grid.Zone(r, k);
                var dry = block.DryOf(z, lane);
                var ash = block.FixedOf(z, HeapBlock.Ash, lane);
                var water = block.Of(z, HeapBlock.Water, lane);
                var weight = (dry + water) * 9.81 / grid.PlanArea[r];
                var middle = stress + (weight / 2);
                stress += weight;
                var pressed = 1 + (c * middle / (middle + half));
                var matter = ((dry - ash) / 1600) + (ash / 2500) + (water / 1000);
                constant += matter - (matter / pressed);
                slope += dry / pressed;
            }
        }

        return (constant, slope);
    }

    /// <summary>Matter of one member in the terms of the equations.</summary>
    internal readonly record struct Portion(
        double Fast,
        double Slow,
        double Lignin,
        double Ash,
        double Water,
        double Mineral,
        double Microbe,
        double FastNitrogen,
        double SlowNitrogen,
        double LigninNitrogen,
        double Size,
        double Passage,
        double Settling
    )
    {
        public double Dry => Fast + Slow + Lignin + Ash;

        public Portion Times(double share) =>
            this with
            {
                Fast = Fast * share,
                Slow = Slow * share,
                Lignin = Lignin * share,
                Ash = Ash * share,
                Water = Water * share,
                Mineral = Mineral * share,
                Microbe = Microbe * share,
            };

        public static Portion Of(HeapBlock block, int lane, HeapMatter matter)
        {
            var b = matter.Balance;
            const double Trace = 1e-6; // of the dry mass, so that no pool is empty
            var trace = b.DryMass * Trace;
            var lignin = Math.Max(b.DryMass - b.Ash - b.FastMatter - b.SlowMatter, trace);
            var fast = Math.Max(b.FastMatter, trace);
            var slow = Math.Max(b.SlowMatter, trace);
            var mineral = b.Nitrogen * block.ParameterOf(HeapParameter.StartMineral, lane);
            var microbe = b.Nitrogen * block.ParameterOf(HeapParameter.StartMicrobe, lane);
            var organic = b.Nitrogen - mineral - microbe;
            var inFast = Math.Min(
                organic * block.ParameterOf(HeapParameter.FastNitrogen, lane),
                fast * MostNitrogen
            );
            var inSlow = Math.Min(
                (organic - inFast)
                    * Math.Min(
                        1,
                        block.ParameterOf(HeapParameter.SlowNitrogen, lane)
                            / (1 - block.ParameterOf(HeapParameter.FastNitrogen, lane))
                    ),
                slow * MostNitrogen
            );
            var inLignin = Math.Min(organic - inFast - inSlow, lignin * MostNitrogen);
            mineral += organic - inFast - inSlow - inLignin;
            var reference = block.ParameterOf(HeapParameter.SizeReference, lane);
            var exponent = block.ParameterOf(HeapParameter.SizeExponent, lane);
            return new Portion(
                fast,
                slow,
                lignin,
                Math.Max(b.Ash, trace),
                Math.Max(b.Water, trace),
                mineral,
                microbe,
                inFast / fast,
                inSlow / slow,
                inLignin / lignin,
                Math.Clamp(Math.Pow(reference / matter.RateSize, exponent), 0.3, 2),
                Math.Clamp(matter.PassageSize / reference, 0.1, 2),
                matter.Settling * block.ParameterOf(HeapParameter.SettleFactor, lane)
            );
        }
    }
}
