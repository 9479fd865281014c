using System.Collections.Immutable;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Simulation;

namespace Heapwright.Core.Lessons;

/// <summary>What differs between two heaps and what stayed the same, as they were told; the tolerances are our own.</summary>
public static class HeapDifferences
{
    private const double Share = 3; // points of dry mass
    private const double Ratio = 0.08;
    private const double Moisture = 2; // points
    private const double Volume = 0.1;
    private const double Air = 3; // K
    private const double Start = 3; // K
    private const double Litres = 5;

    /// <summary>Deeds nearer to each other than this count as done on the same day, d.</summary>
    public const double SameDay = 0.5;

    /// <summary>The table of differences; what is the same stands in it too.</summary>
    /// <param name="first">A heap.</param>
    /// <param name="second">Another one.</param>
    public static ImmutableArray<HeapDifference> Of(
        SimulationQuestion first,
        SimulationQuestion second
    )
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        var (a, b) = (Mixture.Of(first.Mixture), Mixture.Of(second.Mixture));
        return
        [
            .. Materials(a, b),
            Number(
                DifferenceKind.Materials,
                "carbon_nitrogen_ratio",
                a.Typical.CarbonNitrogenRatio,
                b.Typical.CarbonNitrogenRatio,
                Ratio * a.Typical.CarbonNitrogenRatio
            ),
            Number(
                DifferenceKind.Moisture,
                "moisture_pct_wb",
                a.Typical.Moisture,
                b.Typical.Moisture,
                Moisture
            ),
            Number(
                DifferenceKind.Size,
                "filled_volume_l",
                a.Typical.FilledVolume,
                b.Typical.FilledVolume,
                Volume * a.Typical.FilledVolume
            ),
            Number(
                DifferenceKind.Size,
                "bin_volume_l",
                first.Bin.Volume.Liters,
                second.Bin.Volume.Liters,
                Volume * first.Bin.Volume.Liters
            ),
            new HeapDifference(
                DifferenceKind.Enclosure,
                "walls",
                null,
                null,
                first.Walls == second.Walls
            ),
            Deeds(
                DifferenceKind.Enclosure,
                "cover",
                [new Covered(0, first.Cover), .. first.Events.OfType<Covered>()],
                [new Covered(0, second.Cover), .. second.Events.OfType<Covered>()],
                _ => 1
            ),
            Number(
                DifferenceKind.Start,
                "start_c",
                first.StartCelsius ?? first.Weather.MeanAir,
                second.StartCelsius ?? second.Weather.MeanAir,
                first.StartCelsius is null && second.StartCelsius is null
                    ? double.PositiveInfinity
                    : Start
            ),
            Number(
                DifferenceKind.Weather,
                "air_c",
                first.Weather.MeanAir,
                second.Weather.MeanAir,
                Air
            ),
            Deeds(DifferenceKind.Turns, "turns", Some<Turned>(first), Some<Turned>(second), _ => 1),
            Deeds(
                DifferenceKind.Water,
                "water_l",
                Some<Watered>(first),
                Some<Watered>(second),
                e => ((Watered)e).Litres
            ),
            Deeds(
                DifferenceKind.Additions,
                "additions",
                Some<Added>(first),
                Some<Added>(second),
                _ => 1
            ),
        ];
    }

    /// <summary>The kinds in which they differ.</summary>
    /// <param name="differences">The table.</param>
    public static ImmutableArray<DifferenceKind> Changed(IEnumerable<HeapDifference> differences) =>
        [.. differences.Where(d => !d.IsSame).Select(d => d.Kind).Distinct().Order()];

    /// <summary>Whether two deeds are as good as the same.</summary>
    /// <param name="first">A deed.</param>
    /// <param name="second">Another one.</param>
    internal static bool IsSame(HeapEvent first, HeapEvent second) =>
        Math.Abs(first.Day - second.Day) <= SameDay
        && (first, second) switch
        {
            (Added a, Added b) => a
                .Ingredients.Select(i => (i.Key, i.Amount, i.Unit.Unit))
                .SequenceEqual(b.Ingredients.Select(i => (i.Key, i.Amount, i.Unit.Unit))),
            (Watered a, Watered b) => Math.Abs(a.Litres - b.Litres)
                <= Math.Max(Litres, Volume * a.Litres),
            _ => first with { Day = second.Day } == second,
        };

    private static HeapEvent[] Some<T>(SimulationQuestion heap)
        where T : HeapEvent => [.. heap.Events.OfType<T>()];

    private static IEnumerable<HeapDifference> Materials(Mixture a, Mixture b)
    {
        var (first, second) = (Shares(a), Shares(b));
        foreach (var name in first.Keys.Union(second.Keys, StringComparer.OrdinalIgnoreCase))
        {
            yield return Number(
                DifferenceKind.Materials,
                name,
                first.GetValueOrDefault(name),
                second.GetValueOrDefault(name),
                Share
            );
        }
    }

    // Percent of the dry mass, by what it is called.
    private static Dictionary<string, double> Shares(Mixture mixture)
    {
        var shares = new Dictionary<string, double>(StringComparer.OrdinalIgnoreCase);
        foreach (var part in mixture.Parts)
        {
            var name = part.Ingredient.Material?.Name ?? part.Ingredient.Name;
            shares[name] =
                shares.GetValueOrDefault(name)
                + (
                    100
                    * part.Typical.DryMass
                    * part.Ingredient.Amount.Typical
                    / mixture.Typical.Matter.DryMass
                );
        }

        return shares;
    }

    private static HeapDifference Number(
        DifferenceKind kind,
        string what,
        double first,
        double second,
        double tolerance
    ) => new(kind, what, first, second, Math.Abs(first - second) <= tolerance);

    private static HeapDifference Deeds(
        DifferenceKind kind,
        string what,
        HeapEvent[] first,
        HeapEvent[] second,
        Func<HeapEvent, double> amount
    )
    {
        HeapEvent[] a = [.. first.OrderBy(e => e.Day)];
        HeapEvent[] b = [.. second.OrderBy(e => e.Day)];
        return new HeapDifference(
            kind,
            what,
            a.Sum(amount),
            b.Sum(amount),
            a.Length == b.Length && a.Zip(b).All(p => IsSame(p.First, p.Second))
        )
        {
            FirstDays = [.. a.Select(e => e.Day)],
            SecondDays = [.. b.Select(e => e.Day)],
        };
    }
}
