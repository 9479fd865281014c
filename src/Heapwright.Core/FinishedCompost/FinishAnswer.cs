using System.Collections.Immutable;

namespace Heapwright.Core.FinishedCompost;

/// <summary>What can be said of a heap that may be done.</summary>
public sealed record FinishAnswer
{
    /// <summary>Its place on each scale of which the quantity is known.</summary>
    public required ImmutableArray<ScaleFinding> Classes { get; init; }

    /// <summary>How far it has come.</summary>
    public required StageFinding Stage { get; init; }

    /// <summary>What it is ready for.</summary>
    public required ImmutableArray<UseFinding> Uses { get; init; }

    /// <summary>How much there is.</summary>
    public required CompostYield Yield { get; init; }

    /// <summary>What is in it.</summary>
    public required CompostNutrients Nutrients { get; init; }

    /// <summary>What the beds get.</summary>
    public required ImmutableArray<BedPlan> Beds { get; init; }

    /// <summary>The whole batch at one depth, where no beds are named; null where its volume is not known.</summary>
    public BedPlan? WholeBatch { get; init; }

    /// <summary>How far it goes at usual depths; empty where its volume is not known.</summary>
    public required ImmutableArray<Coverage> Covers { get; init; }

    /// <summary>Litres left over after the beds; null where the volume is not known.</summary>
    public Sampled? LeftOver { get; init; }

    /// <summary>What the test in pots shows; null where there was none.</summary>
    public PotTestVerdict? Pots { get; init; }

    /// <summary>The signs that say nothing of the stage.</summary>
    public required ImmutableArray<(string Sign, string Word)> SilentSigns { get; init; }
}
