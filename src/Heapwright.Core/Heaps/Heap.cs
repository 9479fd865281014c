using System.Globalization;
using Heapwright.Core.Bins;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;
using Heapwright.Core.Recipes;

namespace Heapwright.Core.Heaps;

/// <summary>A heap as it was built: of what, in what, when, and for what aim. What happened to it since is its diary.</summary>
public sealed record Heap
{
    /// <summary>What it was built of, in the order in which it was given; at least one.</summary>
    /// <exception cref="ArgumentException">There is none.</exception>
    public required EquatableList<Ingredient> Ingredients
    {
        get;
        init =>
            field =
                value.Count > 0
                    ? value
                    : throw new ArgumentException(
                        "0 ingredients; at least one is needed",
                        nameof(value)
                    );
    } = [];

    /// <summary>Water poured while building, litres; 0 to 1,000,000.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is outside its range.</exception>
    public required Spread WaterLitres
    {
        get;
        init =>
            field =
                value.Low >= 0 && value.High <= 1_000_000
                    ? value
                    : throw new ArgumentOutOfRangeException(
                        nameof(value),
                        value,
                        "0 to 1000000 l is allowed"
                    );
    }

    /// <summary>What holds it, or its outline where nothing does.</summary>
    public required Bin Bin { get; init; }

    /// <summary>When it was finished, with the offset of the clock on the wall.</summary>
    public required DateTimeOffset BuiltAt { get; init; }

    /// <summary>The id of the time zone it stands in, such as <c>Europe/London</c>.</summary>
    public required string Zone { get; init; }

    /// <summary>What its people want most of it.</summary>
    public required RecipeAim Aim { get; init; }

    /// <summary>Days since building, as the simulation counts them: elapsed time over 24 hours, negative before.</summary>
    /// <param name="moment">The moment.</param>
    /// <remarks>The days people count, from midnight to midnight, are another thing (App/Sites/SiteDays).</remarks>
    public double DayOf(DateTimeOffset moment) => (moment - BuiltAt).TotalDays;

    /// <inheritdoc/>
    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"heap of {Ingredients.Count} ingredients, built {BuiltAt:O}"
        );
}
