using System.Collections.Immutable;

namespace Heapwright.Core.Lessons;

/// <summary>One thing in which two heaps may differ.</summary>
/// <param name="Kind">Which.</param>
/// <param name="What">The quantity: the name of a material, or a word such as <c>moisture_pct_wb</c>.</param>
/// <param name="First">Of the first heap, in the unit the word names; null where it has none.</param>
/// <param name="Second">Of the second heap.</param>
/// <param name="IsSame">Whether they are as good as the same.</param>
public sealed record HeapDifference(
    DifferenceKind Kind,
    string What,
    double? First,
    double? Second,
    bool IsSame
)
{
    /// <summary>On which days it was done to the first heap; empty where it is no deed.</summary>
    public ImmutableArray<double> FirstDays { get; init; } = [];

    /// <summary>On which days it was done to the second heap.</summary>
    public ImmutableArray<double> SecondDays { get; init; } = [];

    /// <summary>Whether it is a matter of building, not of what was done later.</summary>
    public bool IsOfBuilding =>
        Kind
            is DifferenceKind.Materials
                or DifferenceKind.Moisture
                or DifferenceKind.Size
                or DifferenceKind.Enclosure
                or DifferenceKind.Start;
}
