using System.Collections.Immutable;
using Heapwright.App.Contract;
using Heapwright.Core.Lessons;

namespace Heapwright.App.Lessons;

/// <summary>A comparison as it was asked.</summary>
/// <param name="Question">The question.</param>
/// <param name="Decides">The word of the figure that decides.</param>
/// <param name="Without">What is not done; null where it is another heap.</param>
/// <param name="Readers">What read the heaps.</param>
internal sealed record AskedComparison(
    ComparisonQuestion Question,
    string Decides,
    string? Without,
    ImmutableArray<ForecastReader> Readers
);
