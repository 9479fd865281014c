using System.Collections.Immutable;

namespace Heapwright.Core.FinishedCompost;

/// <summary>What a bed gets.</summary>
public sealed record BedPlan
{
    /// <summary>From so many years of phosphorus on it is told: more than the next crop takes is left in the soil.</summary>
    public const double ManyYears = 2;

    /// <summary>The bed.</summary>
    public required Bed Bed { get; init; }

    /// <summary>m².</summary>
    public required Sampled SquareMetres { get; init; }

    /// <summary>cm; its origin says whether it was asked for, follows from the batch, or is usual.</summary>
    public required Sampled Centimetres { get; init; }

    /// <summary>Litres.</summary>
    public required Sampled Litres { get; init; }

    /// <summary>kg as it lies.</summary>
    public required Sampled Kilograms { get; init; }

    /// <summary>Nitrogen, g/m².</summary>
    public required Sampled Nitrogen { get; init; }

    /// <summary>Nitrogen that plants get in the first year, g/m².</summary>
    public required Sampled FirstYearNitrogen { get; init; }

    /// <summary>P, g/m².</summary>
    public required Sampled Phosphorus { get; init; }

    /// <summary>For how many years of crops that phosphorus is: what a crop takes away in one year is a figure of the data.</summary>
    public required Sampled PhosphorusYears { get; init; }

    /// <summary>K, g/m².</summary>
    public required Sampled Potassium { get; init; }

    /// <summary>The chance that the nitrogen of the first year is all that the crop needs; null without a figure.</summary>
    public double? ChanceEnough { get; init; }

    /// <summary>The limits.</summary>
    public required ImmutableArray<LimitFinding> Limits { get; init; }

    /// <summary>Days from spreading to harvest where manure was not shown hot; 0 where none is asked; null where nobody can tell.</summary>
    public double? HarvestDays { get; init; }

    /// <summary>The total of a quantity over the bed.</summary>
    /// <param name="perSquareMetre">g/m².</param>
    /// <returns>kg.</returns>
    public Sampled Total(Sampled perSquareMetre)
    {
        ArgumentNullException.ThrowIfNull(perSquareMetre);
        return perSquareMetre.With(SquareMetres, (g, a) => g * a / 1000);
    }
}
