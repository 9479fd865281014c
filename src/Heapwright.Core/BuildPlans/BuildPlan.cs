using System.Collections.Immutable;
using Heapwright.Core.Bins;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Reasons;
using UnitsNet;

namespace Heapwright.Core.BuildPlans;

/// <summary>How to build a heap, layer by layer from the ground up.</summary>
public sealed record BuildPlan
{
    /// <summary>What was asked, with the amounts that are built (without what is left over).</summary>
    public required BuildQuestion Question { get; init; }

    /// <summary>The mixture that the layers make when they are forked together, water included.</summary>
    public required Mixture Mixture { get; init; }

    /// <summary>What holds it: the asker's, or a floor that suits the volume.</summary>
    public required Bin Bin { get; init; }

    /// <summary>The outline as built.</summary>
    public required HeapOutline Outline { get; init; }

    /// <summary>The layers from the ground up; at least one.</summary>
    public required ImmutableArray<BuildLayer> Layers { get; init; }

    /// <summary>Built volume over loose sum: the mixing factor, less what treading takes.</summary>
    public required double BuiltFactor { get; init; }

    /// <summary>All water, the sum of that of the layers.</summary>
    public required Volume Water { get; init; }

    /// <summary>How far kitchen scraps stay from the sides; null without scraps.</summary>
    public Length? ScrapsMargin { get; init; }

    /// <summary>Height after the soft stuff has slumped, some two days.</summary>
    public required Length TwoDayHeight { get; init; }

    /// <summary>Height after two and a half weeks.</summary>
    public required Length SettledHeight { get; init; }

    /// <summary>Time for one person, the stuff standing beside the bay.</summary>
    public required TimeSpan OnePerson { get; init; }

    /// <summary>Time for two people.</summary>
    public required TimeSpan TwoPeople { get; init; }

    /// <summary>Codes of the tools, such as <c>fork</c>.</summary>
    public required ImmutableArray<string> Tools { get; init; }

    /// <summary>Codes of where to stand it, such as <c>shade</c>.</summary>
    public required ImmutableArray<string> Place { get; init; }

    /// <summary>What the builder should know about this very heap.</summary>
    public required ImmutableArray<Reason> Notes { get; init; }

    /// <summary>What was assumed.</summary>
    public required ImmutableArray<Reason> Assumptions { get; init; }

    /// <summary>What does not fit into the bin, in the asker's units; empty if all does.</summary>
    public ImmutableArray<LayerPart> LeftOver { get; init; } = [];

    /// <summary>Height as built.</summary>
    public Length Height => Outline.Height;

    /// <summary>Plans a heap.</summary>
    /// <param name="question">What is to be built, and in what.</param>
    /// <exception cref="ArgumentException">No amount is above 0, or a density is not known.</exception>
    public static BuildPlan Of(BuildQuestion question) => BuildPlanner.Plan(question);
}
