using System.Collections.Immutable;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Simulation;

namespace Heapwright.Core.Advice;

/// <summary>Something that might be done next: one thing, or what belongs together.</summary>
public sealed record HeapAction
{
    /// <summary>What.</summary>
    public required ActionKind Deed { get; init; }

    /// <summary>When, days since building.</summary>
    public required double OnDay { get; init; }

    /// <summary>Water poured, litres; 0 for none.</summary>
    public double Litres { get; init; }

    /// <summary>What is added; null for nothing.</summary>
    public Ingredient? Stuff { get; init; }

    /// <summary>The word of the new cover; null where it is left.</summary>
    public string? Cover { get; init; }

    /// <summary>Minutes of work: estimates of our own.</summary>
    public double Minutes { get; init; }

    /// <summary>What happens, beside what was planned.</summary>
    public ImmutableArray<HeapEvent> Events { get; init; } = [];

    /// <summary>Until when planned additions are left out, days since building; the present for none.</summary>
    public double NothingAddedUntil { get; init; }
}
