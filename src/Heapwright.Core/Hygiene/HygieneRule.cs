using System.Collections.Immutable;
using Heapwright.Core.Materials;

namespace Heapwright.Core.Hygiene;

/// <summary>A published rule on heat, as data. It asks for a period of heat, or for a dose of it.</summary>
public sealed record HygieneRule
{
    /// <summary>Its id, such as <c>us_503_psrp</c>.</summary>
    public required string Id { get; init; }

    /// <summary>What it is called.</summary>
    public required string Title { get; init; }

    /// <summary>The countries whose rule it is, by their codes.</summary>
    public required ImmutableArray<string> Countries { get; init; }

    /// <summary>The kinds of process it is for.</summary>
    public required ImmutableArray<ProcessKind> Processes { get; init; }

    /// <summary>The period of heat; null where it asks for a dose.</summary>
    public HeatPeriod? Period { get; init; }

    /// <summary>A spell of more heat within the period; null if none is asked for.</summary>
    public HeatSpell? Spell { get; init; }

    /// <summary>The equations of its dose; empty where it asks for a period.</summary>
    public ImmutableArray<DoseFormula> Doses { get; init; } = [];

    /// <summary>Codes of what else it asks and no thermometer can show.</summary>
    public ImmutableArray<string> AlsoAsks { get; init; } = [];

    /// <summary>The key of its source in data/references.bib.</summary>
    public required string Source { get; init; }

    /// <summary>Where it stands, in words.</summary>
    public required string Citation { get; init; }

    /// <summary>How its text came to be known.</summary>
    public required EvidenceKind Kind { get; init; }
}
