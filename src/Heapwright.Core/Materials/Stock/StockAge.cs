using System.Collections.Immutable;
using Heapwright.Core.Quantities;
using Heapwright.Core.Reasons;

namespace Heapwright.Core.Materials.Stock;

/// <summary>What a material becomes in store.</summary>
/// <remarks>
/// Published: 20 to 60 % of the nitrogen of manures is commonly lost while they rot (several papers, from memory; a
/// range only). All other shares and times here are our own estimates, wide on purpose: store differs far more than
/// materials do.
/// </remarks>
public static class StockAge
{
    /// <summary>The longest time in store that is reckoned with, days.</summary>
    public const double LongestDays = 3650;

    // Rain: after three weeks in the open, two thirds of the way to soaked.
    private const double RainDays = 21;
    private const double SoakedTypical = 62;
    private const double SoakedHigh = 76;
    private const double DryingDays = 30;

    /// <summary>The material after some days in store.</summary>
    /// <param name="material">The material as it was when it came in.</param>
    /// <param name="days">Days in store, 0 to <see cref="LongestDays"/>.</param>
    /// <param name="keeping">How it was kept.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number of days is outside its range.</exception>
    public static AgedMaterial After(
        Material material,
        double days,
        Keeping keeping = Keeping.Unknown
    )
    {
        ArgumentNullException.ThrowIfNull(material);
        if (!(days >= 0 && days <= LongestDays))
        {
            throw new ArgumentOutOfRangeException(
                nameof(days),
                days,
                FormattableString.Invariant($"0 to {LongestDays} days in store are allowed")
            );
        }

        var left = material.SpoilsInDays is { } lasts ? Math.Max(0, lasts - days) : (double?)null;
        var spoiled = left is 0;
        var reasons = ImmutableArray.CreateBuilder<Reason>();
        var aged = material;
        if (days > 0)
        {
            aged = material.SpoilsHow switch
            {
                "ferments" => Ferment(material, days),
                "loses_nitrogen" => LoseNitrogen(material, days),
                "gets_wet" => GetWet(material, days, keeping),
                "moulds" => Mould(material, days, spoiled),
                "dries_out" => DryOut(material, days, keeping),
                _ => material,
            };
        }

        Explain(material, days, keeping, left, reasons);
        return new AgedMaterial(aged, spoiled, left, reasons.ToImmutable());
    }

    private static void Explain(
        Material material,
        double days,
        Keeping keeping,
        double? left,
        ImmutableArray<Reason>.Builder reasons
    )
    {
        if (material.SpoilsHow.Length == 0)
        {
            reasons.Add(Reason.Of("materials.keeps", material.Name));
            return;
        }

        if (left is { } soon)
        {
            reasons.Add(
                soon > 0
                    ? Reason.Of(
                        $"materials.{material.SpoilsHow}_soon",
                        material.Name,
                        Math.Round(soon, 1)
                    )
                    : Reason.Of(
                        $"materials.{material.SpoilsHow}_done",
                        material.Name,
                        Math.Round(days, 1)
                    )
            );
        }
        else if (days > 0 && !(IsRain(material) && keeping == Keeping.Covered))
        {
            reasons.Add(
                Reason.Of(
                    $"materials.{material.SpoilsHow}_done",
                    material.Name,
                    Math.Round(days, 1)
                )
            );
        }

        if (days > 0 && IsRain(material) && keeping == Keeping.Unknown)
        {
            reasons.Add(Reason.Of("materials.kept_how", material.Name));
        }
    }

    private static bool IsRain(Material material) =>
        string.Equals(material.SpoilsHow, "gets_wet", StringComparison.Ordinal);

    // The share of a slow change that is done: two thirds after the time given.
    private static double Done(double days, double time) => 1 - Math.Exp(-days / time);

    private static Material Ferment(Material material, double days)
    {
        var done = Done(days, Math.Max(0.25, material.SpoilsInDays ?? 3));
        var properties = material.Properties;
        properties = Scale(
            properties,
            MaterialProperty.Fast,
            1 - (0.6 * done),
            1 - (0.35 * done),
            1
        );
        properties = Scale(
            properties,
            MaterialProperty.Nitrogen,
            1 - (0.3 * done),
            1 - (0.1 * done),
            1 + (0.1 * done)
        );
        properties = Scale(
            properties,
            MaterialProperty.BulkDensity,
            1,
            1 + (0.3 * done),
            1 + (0.8 * done)
        );
        return material with { Properties = properties };
    }

    // Dry matter rots away beside the nitrogen, so its share of what is left falls by less than the loss.
    private static Material LoseNitrogen(Material material, double days)
    {
        var done = Done(days, Math.Clamp(2 * (material.SpoilsInDays ?? 30), 6, 60));
        return material with
        {
            Properties = Scale(
                material.Properties,
                MaterialProperty.Nitrogen,
                1 - (0.6 * done),
                1 - (0.35 * done),
                1 - (0.1 * done)
            ),
        };
    }

    private static Material Mould(Material material, double days, bool spoiled)
    {
        var done = Done(days, Math.Max(1, material.SpoilsInDays ?? 30));
        var cautions =
            spoiled && !material.Cautions.Contains("dust_mould", StringComparer.Ordinal)
                ? material.Cautions.Add("dust_mould")
                : material.Cautions;
        return material with
        {
            Properties = Scale(
                material.Properties,
                MaterialProperty.Fast,
                1 - (0.6 * done),
                1 - (0.3 * done),
                1
            ),
            Cautions = cautions,
        };
    }

    private static Material GetWet(Material material, double days, Keeping keeping)
    {
        if (
            keeping == Keeping.Covered
            || material.Properties[MaterialProperty.Moisture] is not { } before
        )
        {
            return material;
        }

        var rained = Done(days, RainDays);
        var sure = keeping == Keeping.Open ? 1 : 0.4;
        var moisture = Spread.Of(
            keeping == Keeping.Open ? Toward(before.Low, SoakedTypical / 2, rained) : before.Low,
            Toward(before.Typical, SoakedTypical, sure * rained),
            Toward(before.High, SoakedHigh, rained)
        );
        return WithMoisture(material, before, moisture);
    }

    private static Material DryOut(Material material, double days, Keeping keeping)
    {
        if (material.Properties[MaterialProperty.Moisture] is not { } before)
        {
            return material;
        }

        // Open to the sky it may just as well be rained on: only the low end is sure to be reached by then.
        var done = Done(days, material.SpoilsInDays ?? DryingDays);
        var typical = keeping == Keeping.Open ? 0.1 : 0.3;
        var moisture = Spread.Of(
            before.Low * (1 - (0.6 * done)),
            before.Typical * (1 - (typical * done)),
            before.High
        );
        return WithMoisture(material, before, moisture);
    }

    // Never away from the target: what is wetter than soaked stays as wet as it is.
    private static double Toward(double value, double target, double share) =>
        value + (share * Math.Max(0, target - value));

    // A litre of loose stuff keeps its dry matter: the density follows the water.
    private static Material WithMoisture(Material material, Spread before, Spread moisture)
    {
        var properties = material.Properties.With(MaterialProperty.Moisture, moisture);
        properties = Scale(
            properties,
            MaterialProperty.BulkDensity,
            (100 - before.Low) / (100 - moisture.Low),
            (100 - before.Typical) / (100 - moisture.Typical),
            (100 - before.High) / (100 - moisture.High)
        );
        return material with { Properties = properties };
    }

    // Times an uncertain factor. The factor's ends are taken for the far ends of the product; with the property's own
    // ends they give a range on the wide side.
    private static MaterialProperties Scale(
        MaterialProperties properties,
        MaterialProperty property,
        double low,
        double typical,
        double high
    )
    {
        if (properties[property] is not { } value)
        {
            return properties;
        }

        var (lowest, highest) = PropertyFacts.Allowed(property);
        var middle = value.Typical * typical;
        return properties.With(
            property,
            Spread.Of(
                Math.Clamp(Math.Min(value.Low * low, middle), lowest, highest),
                Math.Clamp(middle, lowest, highest),
                Math.Clamp(Math.Max(value.High * high, middle), lowest, highest)
            )
        );
    }
}
