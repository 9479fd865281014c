namespace Heapwright.Numerics.Search;

/// <summary>When a search must end. The node limit is deterministic; the two others depend on the clock and end the proof honestly.</summary>
public sealed record SearchBudget
{
    /// <summary>The budget used when none is given: the node limit alone.</summary>
    public static SearchBudget Default { get; } = new();

    /// <summary>Most nodes of the tree that may be visited, summed over all stages of one call; at least 1.</summary>
    public long Nodes { get; init; } = 20_000_000;

    /// <summary>Asked every few thousand nodes; true ends the search. Null: never asked. Lets the caller bring a time limit.</summary>
    public Func<bool>? Stop { get; init; }

    /// <summary>Cancellation ends the search like <see cref="Stop"/>: what was found is still returned, without a proof.</summary>
    public CancellationToken Cancellation { get; init; }

    /// <summary>Refuses a limit below one node.</summary>
    /// <exception cref="ArgumentException">The node limit is not positive.</exception>
    internal void Check()
    {
        if (Nodes < 1)
        {
            throw ChanceProblemCheck.Wrong(nameof(Nodes), Nodes, "1 or more");
        }
    }
}
