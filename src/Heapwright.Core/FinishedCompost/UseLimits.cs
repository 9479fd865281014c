using System.Collections.Immutable;

namespace Heapwright.Core.FinishedCompost;

/// <summary>For which uses something rules compost out, and for which it asks for care.</summary>
/// <param name="Bars">Uses that are ruled out.</param>
/// <param name="Cares">Uses that need care.</param>
public sealed record UseLimits(ImmutableArray<CompostUse> Bars, ImmutableArray<CompostUse> Cares)
{
    /// <summary>Nothing is ruled out.</summary>
    public static UseLimits None { get; } = new([], []);
}
