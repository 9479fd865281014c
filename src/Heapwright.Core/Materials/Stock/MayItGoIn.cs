using System.Collections.Immutable;
using Heapwright.Core.Reasons;

namespace Heapwright.Core.Materials.Stock;

/// <summary>May this go into the heap? It advises, with its reasons, and never refuses in silence.</summary>
public static class MayItGoIn
{
    // What only a heap that gets hot all through makes harmless.
    private static readonly string[] NeedHeat =
    [
        "plant_disease",
        "weed_seed",
        "spreads_from_roots",
        "raw_manure",
    ];

    /// <summary>The advice for a material.</summary>
    /// <param name="material">The material.</param>
    /// <param name="getsHot">Whether the heap is expected to get hot and be turned.</param>
    /// <exception cref="ArgumentException">The material's advice is none of the four words.</exception>
    public static Admission Judge(Material material, bool getsHot = true)
    {
        ArgumentNullException.ThrowIfNull(material);
        var advice = Read(material);
        var needs = material.Cautions.Where(c => NeedHeat.Contains(c, StringComparer.Ordinal));
        var cold = !getsHot && needs.Any();
        if (cold && advice == AdmissionAdvice.May)
        {
            advice = AdmissionAdvice.WithCare;
        }

        if (advice == AdmissionAdvice.May)
        {
            return new Admission(advice, []);
        }

        var reasons = ImmutableArray.CreateBuilder<Reason>();
        reasons.Add(
            Reason.Of(
                advice switch
                {
                    AdmissionAdvice.Never => "materials.never",
                    AdmissionAdvice.NotAdvised => "materials.not_advised",
                    _ => "materials.with_care",
                },
                material.Name
            )
        );
        if (cold)
        {
            reasons.Add(Reason.Of("materials.needs_heat", material.Name));
        }

        reasons.AddRange(material.Cautions.Select(c => Reason.Of($"cautions.{c}.why")));
        if (advice is AdmissionAdvice.Never or AdmissionAdvice.NotAdvised)
        {
            reasons.Add(Reason.Of("materials.local_rules"));
        }

        return new Admission(advice, reasons.ToImmutable());
    }

    private static AdmissionAdvice Read(Material material) =>
        material.Advice switch
        {
            "may" => AdmissionAdvice.May,
            "with_care" => AdmissionAdvice.WithCare,
            "not_advised" => AdmissionAdvice.NotAdvised,
            "never" => AdmissionAdvice.Never,
            _ => throw new ArgumentException(
                $"\"{material.Advice}\" is no advice; may, with_care, not_advised or never is",
                nameof(material)
            ),
        };
}
