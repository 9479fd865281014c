using Heapwright.Core.Materials;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;
using Heapwright.Numerics.Sampling;

namespace Heapwright.Core.Diagnosis;

/// <summary>
/// What a heap wants to be mended, at every point of a sample: kg of water to be taken up, kg of carbon that is over or
/// wanting at the near end of the preferred C:N, or litres of cover. What a unit of some stuff does of it follows from the stuff's own balance.
/// </summary>
/// <remarks>
/// A heap is taken to have the fault it is mended for: points of the sample at which nothing is wanted are left out.
/// </remarks>
public sealed class MendDemand
{
    private const int Points = 256;
    private const double FewestPoints = 0.1; // share at which something is wanted; below it nothing is
    private const double MostUseless = 0.04; // share of points at which some stuff does nothing, or harm

    // Surface over volume to the power of 2/3: the top of a box 0.7 to 1.2 times as high as wide, and the whole of a cone
    // 0.5 to 1 times as high as its radius; where nothing is said, either.
    private static readonly Spread TopOfBox = Spread.Of(0.85, 1, 1.3);
    private static readonly Spread WholeCone = Spread.Of(4, 4.5, 5.4);
    private static readonly Spread Unsaid = Spread.Of(0.9, 2, 5);

    private readonly QuasiRandomSet points;
    private readonly double[] wanted;

    private MendDemand(MendPurpose purpose, QuasiRandomSet points, double[] wanted, MendGap gap)
    {
        Purpose = purpose;
        this.points = points;
        this.wanted = wanted;
        Gap =
            gap == MendGap.None && wanted.Count(w => w > 0) < FewestPoints * wanted.Length
                ? MendGap.NothingWanted
                : gap;
    }

    /// <summary>The C:N that a heap short of nitrogen is brought to: the high end of the preferred range.</summary>
    public static double RatioFromAbove { get; } = Aims.CarbonNitrogen.High!.Value;

    /// <summary>The C:N that a heap with too much nitrogen is brought to: the low end of the preferred range.</summary>
    public static double RatioFromBelow { get; } = Aims.CarbonNitrogen.Low!.Value;

    /// <summary>How deep a cover lies, cm: hand-deep (common practice, no source).</summary>
    public static Spread CoverDepth { get; } = Spread.Of(8, 10, 15);

    /// <summary>What for.</summary>
    public MendPurpose Purpose { get; }

    /// <summary>Why nothing can be told, or none.</summary>
    public MendGap Gap { get; }

    /// <summary>What a heap wants.</summary>
    /// <param name="purpose">What for.</param>
    /// <param name="heap">What is known of it.</param>
    /// <param name="seed">The seed of the sample.</param>
    public static MendDemand Of(MendPurpose purpose, HeapToMend heap, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(heap);
        var set = new QuasiRandomSet(Points, seed);
        var (demand, gap) = Wanted(purpose, heap, set);
        return new MendDemand(purpose, set, demand, gap);
    }

    /// <summary>How many units of some stuff alone it takes.</summary>
    /// <param name="stuff">The stuff; its amount does not matter.</param>
    /// <returns>
    /// 5th, 50th and 95th percentile; null where nothing can be told of the heap or of the stuff, or the stuff is likely
    /// enough to be useless: too wet itself, or no richer or poorer in nitrogen than what is aimed at.
    /// </returns>
    public Spread? UnitsOf(Ingredient stuff)
    {
        ArgumentNullException.ThrowIfNull(stuff);
        if (Gap != MendGap.None || !IsKnown(stuff))
        {
            return null;
        }

        var sample = IngredientSample.Draw(stuff, points);
        var units = new List<double>(wanted.Length);
        var useless = 0;
        for (var i = 0; i < wanted.Length; i++)
        {
            if (wanted[i] > 0)
            {
                var done = Done(sample.PerUnit[i]);
                useless += done > 0 ? 0 : 1;
                units.Add(done > 0 ? wanted[i] / done : double.MaxValue);
            }
        }

        return useless <= MostUseless * units.Count ? Spread.OfSample(units.ToArray()) : null;
    }

    /// <summary>Whether enough is known of some stuff.</summary>
    /// <param name="stuff">The stuff.</param>
    public static bool IsKnown(Ingredient stuff)
    {
        ArgumentNullException.ThrowIfNull(stuff);
        return stuff.Properties[MaterialProperty.Carbon] is not null
            && stuff.Properties[MaterialProperty.Nitrogen] is not null
            && stuff.Properties[MaterialProperty.Moisture] is not null
            && stuff.Properties[MaterialProperty.BulkDensity] is not null;
    }

    // What one unit does, in the unit of what is wanted.
    private double Done(MassBalance unit) =>
        Purpose switch
        {
            MendPurpose.DryUp => (unit.DryMass * RepairAmount.Held(RepairAmount.Drained))
                - unit.Water,
            MendPurpose.BringNitrogen => (RatioFromAbove * unit.Nitrogen) - unit.Carbon,
            MendPurpose.BindNitrogen => unit.Carbon - (RatioFromBelow * unit.Nitrogen),
            _ => unit.LooseVolume,
        };

    private static (double[] Wanted, MendGap Gap) Wanted(
        MendPurpose purpose,
        HeapToMend heap,
        QuasiRandomSet set
    )
    {
        if (heap.VolumeM3 is not { } size)
        {
            return ([], MendGap.Size);
        }

        var block = set.Block("heap to mend");
        var u = new double[set.Count];
        double[] Draw(int dimension, Spread value)
        {
            block.Fill(dimension, u);
            return value.Sample(u, SpreadScale.Positive);
        }

        var volume = Draw(0, size);
        var demand = new double[set.Count];
        if (purpose == MendPurpose.Cover)
        {
            if (Surface(heap.Container) is not { } surface)
            {
                return ([], MendGap.Shape);
            }

            var (factor, depth) = (Draw(4, surface), Draw(5, CoverDepth));
            for (var i = 0; i < demand.Length; i++)
            {
                // m² times cm is 10 litres.
                demand[i] = factor[i] * Math.Pow(volume[i], 2.0 / 3) * depth[i] * 10;
            }

            return (demand, MendGap.None);
        }

        var dry = Draw(1, RepairAmount.DryMatter); // kg/m³
        if (purpose == MendPurpose.DryUp)
        {
            if (heap.Squeeze is null)
            {
                return ([], MendGap.Squeeze);
            }

            if (RepairAmount.WetMoisture(heap.Squeeze) is not { } moisture)
            {
                return ([], MendGap.NothingWanted);
            }

            var over = RepairAmount.Held(moisture) - RepairAmount.Held(RepairAmount.Drained);
            for (var i = 0; i < demand.Length; i++)
            {
                demand[i] = dry[i] * volume[i] * over;
            }

            return (demand, MendGap.None);
        }

        if (heap.CarbonNitrogenRatio is not { } mixed || heap.CarbonPercent is not { } carbon)
        {
            return ([], MendGap.Contents);
        }

        var (ratio, share) = (Draw(2, mixed), Draw(3, carbon));
        for (var i = 0; i < demand.Length; i++)
        {
            // C − R N of what is there, with N = C/ratio.
            var carbonThere = dry[i] * volume[i] * share[i] / 100;
            demand[i] =
                purpose == MendPurpose.BringNitrogen
                    ? carbonThere * (1 - (RatioFromAbove / ratio[i]))
                    : carbonThere * ((RatioFromBelow / ratio[i]) - 1);
        }

        return (demand, MendGap.None);
    }

    private static Spread? Surface(string? container) =>
        container switch
        {
            null => Unsaid,
            "windrow" => null,
            "open" => WholeCone,
            _ => TopOfBox,
        };
}
