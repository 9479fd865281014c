using System.Collections.Immutable;
using Heapwright.Core.Materials.Guessing;
using Heapwright.Core.Quantities;
using Heapwright.Core.Reasons;

namespace Heapwright.Core.Materials;

/// <summary>Wide, honest ranges for stuff nobody can name, from what can be seen and felt of it.</summary>
/// <remarks>
/// The ranges come from the library itself: those of all materials of the same kind and freshness, mixed into one
/// distribution, with a share of the same kind in other states and a little of other kinds in the same state. Colour
/// and feel weigh the materials that would look and feel so; they never rule one out.
/// </remarks>
public static class MaterialGuess
{
    // A code is passed on when materials holding this share of the weight carry it: cautions early, advice on handling
    // only when most of them agree.
    private const double CautionShare = 0.2;
    private const double PrepareShare = 0.5;
    private const double SpoilShare = 0.25;

    /// <summary>The material that a description may stand for.</summary>
    /// <param name="library">The library that is pooled; at least one material.</param>
    /// <param name="seen">What is seen and felt.</param>
    /// <exception cref="ArgumentException">The library holds no material.</exception>
    public static GuessedMaterial Of(MaterialLibrary library, LookAndFeel seen)
    {
        ArgumentNullException.ThrowIfNull(library);
        ArgumentNullException.ThrowIfNull(seen);
        var pool = Weighed(Pool.Of(library, seen.Kind, seen.Freshness), seen);
        var properties = Properties(pool, seen);
        var alike = library
            .All.Where(m =>
                string.Equals(m.Kind, seen.Kind, StringComparison.Ordinal)
                && string.Equals(m.Freshness, seen.Freshness, StringComparison.Ordinal)
            )
            .ToList();
        var families = alike.Select(m => m.Family).Distinct(StringComparer.Ordinal).Count();
        return new GuessedMaterial(
            Describe(pool, seen, properties),
            alike.Count,
            families,
            Assumptions(seen, alike.Count, families)
        );
    }

    /// <summary>The ranges alone.</summary>
    /// <param name="library">The library that is pooled; at least one material.</param>
    /// <param name="seen">What is seen and felt.</param>
    /// <exception cref="ArgumentException">The library holds no material.</exception>
    public static MaterialProperties Properties(MaterialLibrary library, LookAndFeel seen)
    {
        ArgumentNullException.ThrowIfNull(library);
        ArgumentNullException.ThrowIfNull(seen);
        return Properties(Weighed(Pool.Of(library, seen.Kind, seen.Freshness), seen), seen);
    }

    private static ImmutableArray<(Material Material, double Weight)> Weighed(
        ImmutableArray<(Material Material, double Weight)> pool,
        LookAndFeel seen
    )
    {
        var weighed = new List<(Material, double)>(pool.Length);
        foreach (var (material, weight) in pool)
        {
            var likely = weight;
            foreach (var property in PropertyFacts.All)
            {
                if (
                    Evidence.For(seen, property) is { } likelihood
                    && material.Properties[property] is { } value
                )
                {
                    likely *= Mixing.MeanLikelihood(value, property, likelihood);
                }
            }

            weighed.Add((material, likely));
        }

        var sum = weighed.Sum(w => w.Item2);
        return [.. weighed.Select(w => (w.Item1, w.Item2 / sum))];
    }

    private static MaterialProperties Properties(
        ImmutableArray<(Material Material, double Weight)> pool,
        LookAndFeel seen
    )
    {
        var properties = MaterialProperties.None;
        foreach (var property in PropertyFacts.All)
        {
            var likelihood = Evidence.For(seen, property);
            var parts = new List<(Spread Value, double Weight)>();
            foreach (var (material, weight) in pool)
            {
                if (material.Properties[property] is { } value)
                {
                    // The weight already holds the mean likelihood, which the mixture applies value by value.
                    var own = likelihood is null
                        ? weight
                        : weight / Mixing.MeanLikelihood(value, property, likelihood);
                    parts.Add((value, own));
                }
            }

            if (parts.Count > 0)
            {
                properties = properties.With(
                    property,
                    Mixing.Of(parts, property, likelihood).Percentiles()
                );
            }
        }

        return properties;
    }

    private static Material Describe(
        ImmutableArray<(Material Material, double Weight)> pool,
        LookAndFeel seen,
        MaterialProperties properties
    ) =>
        new()
        {
            Id = "guess",
            Name = $"Unknown stuff, {seen.Kind}, {seen.Freshness}",
            Group = "unknown",
            Family = "unknown",
            Kind = seen.Kind,
            State = seen.Freshness,
            Freshness = seen.Freshness,
            CountsAs = Commonest(pool, m => m.CountsAs),
            Particle = Commonest(pool, m => m.Particle),
            SpoilsInDays = Spoils(pool),
            SpoilsHow = Commonest(pool, m => m.SpoilsHow),
            Prepare = Codes(pool, m => m.Prepare, PrepareShare),
            Cautions =
            [
                .. Unnamed(seen.Kind)
                    .Union(Codes(pool, m => m.Cautions, CautionShare), StringComparer.Ordinal),
            ],
            AskGiver = Codes(pool, m => m.AskGiver, CautionShare),
            Advice = "with_care",
            Properties = properties,
        };

    // What to reckon with as long as nobody can say what the stuff is.
    private static string[] Unnamed(string kind) =>
        kind switch
        {
            "leafy" or "stemmy" or "fruity" or "seedy" =>
            [
                "toxic_plant",
                "invasive",
                "herbicide_residue",
            ],
            "woody" => ["treated_wood"],
            "papery" => ["inks_coatings", "glass_plastic"],
            "manure" => ["raw_manure", "herbicide_residue"],
            "meal" => ["dust_mould"],
            _ => ["legionella_dust", "heavy_metals"],
        };

    private static string Commonest(
        ImmutableArray<(Material Material, double Weight)> pool,
        Func<Material, string> word
    ) =>
        pool.GroupBy(p => word(p.Material), StringComparer.Ordinal)
            .OrderByDescending(g => g.Sum(p => p.Weight))
            .ThenBy(g => g.Key, StringComparer.Ordinal)
            .First()
            .Key;

    private static ImmutableArray<string> Codes(
        ImmutableArray<(Material Material, double Weight)> pool,
        Func<Material, ImmutableArray<string>> codes,
        double share
    ) =>
        [
            .. pool.SelectMany(p => codes(p.Material).Select(code => (code, p.Weight)))
                .GroupBy(p => p.code, StringComparer.Ordinal)
                .Select(g => (Code: g.Key, Share: g.Sum(p => p.Weight)))
                .Where(g => g.Share >= share)
                .OrderByDescending(g => g.Share)
                .ThenBy(g => g.Code, StringComparer.Ordinal)
                .Select(g => g.Code),
        ];

    // On the safe side: the time within which the first quarter of such stuff has spoiled.
    private static double? Spoils(ImmutableArray<(Material Material, double Weight)> pool)
    {
        var gone = 0.0;
        foreach (
            var (material, weight) in pool.Where(p => p.Material.SpoilsInDays is not null)
                .OrderBy(p => p.Material.SpoilsInDays)
        )
        {
            gone += weight;
            if (gone >= SpoilShare)
            {
                return material.SpoilsInDays;
            }
        }

        return null;
    }

    private static ImmutableArray<Reason> Assumptions(LookAndFeel seen, int pooled, int families)
    {
        var assumptions = ImmutableArray.CreateBuilder<Reason>();
        assumptions.Add(
            pooled == 0
                ? Reason.Of("materials.guess_from_kindred", seen.Kind, seen.Freshness)
                : Reason.Of(
                    "materials.guess_pooled",
                    seen.Kind,
                    seen.Freshness,
                    pooled,
                    families,
                    Math.Round((Mixing.Widening - 1) * 100)
                )
        );
        if (seen.Colour.Length > 0 && Evidence.For(seen, MaterialProperty.Nitrogen) is null)
        {
            assumptions.Add(Reason.Of("materials.colour_tells_nothing"));
        }

        if (
            seen.Feel.Length > 0
            && Evidence.For(seen, MaterialProperty.Moisture) is null
            && Evidence.For(seen, MaterialProperty.Lignin) is null
        )
        {
            assumptions.Add(Reason.Of("materials.feel_tells_nothing"));
        }

        return assumptions.ToImmutable();
    }
}
