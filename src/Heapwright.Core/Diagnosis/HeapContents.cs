using System.Collections.Immutable;
using Heapwright.Core.Amounts;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.Diagnosis;

/// <summary>What the materials of a heap say: the ratio and the water of their mixture, and what they bring with them.</summary>
public static class HeapContents
{
    private const string HasField = "materials.has";
    private const double SeldomNamed = 0.5; // what is put in and not told
    private const int Points = 128;

    /// <summary>The facts of materials.</summary>
    /// <param name="model">The model.</param>
    /// <param name="parts">The materials; at least one.</param>
    /// <param name="seed">The seed of the sample of the mixture.</param>
    public static IEnumerable<SignFact> Facts(
        SignModel model,
        ImmutableArray<HeapPart> parts,
        ulong seed
    )
    {
        ArgumentNullException.ThrowIfNull(model);
        var mixture = Mixed(parts, seed);
        // What has nearly no carbon or nitrogen, such as lime alone, has no ratio that says anything.
        if (mixture.Quantity(s => s.CarbonNitrogenRatio) is { } ratio)
        {
            yield return NumberFacts.Of(
                model.Field("materials.carbon_nitrogen_ratio"),
                ratio,
                inLogs: true
            );
        }

        if (mixture.Quantity(s => s.Moisture) is { } moisture)
        {
            yield return NumberFacts.Of(
                model.Field("materials.moisture_pct_wb"),
                moisture,
                inLogs: false
            );
        }

        var has = model.Field(HasField);
        var brought = parts.SelectMany(Brings).ToHashSet(StringComparer.Ordinal);
        foreach (var word in has.Words)
        {
            yield return new WordFact(has, word, !brought.Contains(word), SeldomNamed);
        }
    }

    /// <summary>The mixture of the materials, by the shares that were told.</summary>
    /// <param name="parts">The materials; at least one.</param>
    /// <param name="seed">The seed of the sample of the mixture.</param>
    public static Mixture Mixed(ImmutableArray<HeapPart> parts, ulong seed) =>
        Mixture.Of(
            new MixtureQuestion
            {
                Ingredients = [.. parts.Select(Ingredient)],
                PointCount = Points,
                Seed = seed,
            }
        );

    private static Ingredient Ingredient(HeapPart part) =>
        new()
        {
            Name = part.Material.Name,
            Material = part.Material,
            Properties = part.Material.Properties,
            Amount = part.Share switch
            {
                HeapShare.Only => Spread.Exact(100),
                HeapShare.Most => Spread.Of(40, 60, 85),
                HeapShare.Little => Spread.Of(2, 6, 12),
                _ => Spread.Of(12, 25, 45),
            },
            Unit = UnitSize.OfVolume("l", Spread.Exact(1), wholeByDefault: false),
        };

    private static IEnumerable<string> Brings(HeapPart part)
    {
        var (material, isMuch) = (part.Material, part.Share is HeapShare.Only or HeapShare.Most);
        var isGreen = material.CountsAs == "green";
        if (material.Group == "kitchen" || material.Cautions.Contains("attracts_animals"))
        {
            yield return "food";
        }

        if (material.Family == "soil" && part.Share != HeapShare.Little)
        {
            yield return "soil";
        }

        if (
            material.Group is "straw_hay" or "manure"
            && material.Cautions.Contains("herbicide_residue")
        )
        {
            yield return "hay_manure";
        }

        if (material.Cautions.Contains("weed_seed"))
        {
            yield return "weed_seed";
        }

        if (material.Cautions.Contains("spreads_from_roots"))
        {
            yield return "running_roots";
        }

        if (material.Cautions.Contains("plant_disease"))
        {
            yield return "diseased";
        }

        if (isMuch && material.Particle == "fine" && material.CountsAs is "green" or "brown")
        {
            yield return "mats";
        }

        if (isMuch && material.Particle == "coarse")
        {
            yield return "coarse";
        }

        if (HasLostNitrogen(part))
        {
            yield return "lost_nitrogen";
        }

        if (material.Family == "compost" && part.Share != HeapShare.Little)
        {
            yield return "rotted_already";
        }

        if (isGreen && (material.Family == "coffee_tea_cocoa" || material.Freshness is "dry"))
        {
            yield return "looks_brown";
        }
    }

    private static bool HasLostNitrogen(HeapPart part)
    {
        const double LongStored = 40; // days in which what is green and left lying has lost most of its ammonia
        var material = part.Material;
        return (
                material.SpoilsHow == "loses_nitrogen"
                && part.StoredDays > 2 * (material.SpoilsInDays ?? LongStored)
            )
            || (
                (material.CountsAs == "green" || material.Group == "manure")
                && (part.StoredDays > LongStored || material.Freshness == "aged")
            );
    }
}
