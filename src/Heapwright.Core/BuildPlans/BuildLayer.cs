using System.Collections.Immutable;
using Heapwright.Core.Reasons;
using UnitsNet;

namespace Heapwright.Core.BuildPlans;

/// <summary>One layer of a build plan.</summary>
public sealed record BuildLayer
{
    /// <summary>Its number, counted from the ground up from 1.</summary>
    public required int Number { get; init; }

    /// <summary>What it is for.</summary>
    public required LayerRole Role { get; init; }

    /// <summary>What goes in; at least one.</summary>
    public required ImmutableArray<LayerPart> Parts { get; init; }

    /// <summary>How high above the ground it begins; of a cover without walls, at the crown.</summary>
    public required Length Bottom { get; init; }

    /// <summary>How thick it is as built, forked and watered, on the floor at its height.</summary>
    public required Length Thickness { get; init; }

    /// <summary>The water that goes on it while building.</summary>
    public required Volume Water { get; init; }

    /// <summary>Codes of how to prepare what goes in, each once, such as <c>soak_first</c>.</summary>
    public required ImmutableArray<string> Prepare { get; init; }

    /// <summary>The number of the layer below with which it is forked together, or null.</summary>
    public int? ForkWith { get; init; }

    /// <summary>Why it is there, and like this.</summary>
    public required Reason Why { get; init; }

    /// <summary>Where it ends, above the ground.</summary>
    public Length Top => Bottom + Thickness;
}
