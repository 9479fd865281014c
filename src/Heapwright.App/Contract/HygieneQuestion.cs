using System.Collections.Immutable;
using Heapwright.App.HeatRecords;
using Heapwright.Core.Hygiene;

namespace Heapwright.App.Contract;

/// <summary>A question of <c>hygiene</c>, read and checked.</summary>
internal sealed record HygieneQuestion
{
    public required ProcessKind Process { get; init; }

    public required HeatRecord Record { get; init; }

    public required ImmutableArray<HygieneRule> Rules { get; init; }

    /// <summary>Whether the rules were named one by one, so that one not met is an answered no.</summary>
    public required bool AreNamed { get; init; }

    public string? Country { get; init; }

    public double? SolidsPercent { get; init; }
}
