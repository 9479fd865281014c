namespace Heapwright.Numerics.Search;

/// <summary>What a search found, and what that is worth.</summary>
public sealed record ChanceAnswer
{
    /// <summary>Optimal, feasible without proof, proven infeasible, or unknown.</summary>
    public required SearchStatus Status { get; init; }

    /// <summary>The amounts, [variable]; empty when nothing feasible was found.</summary>
    public required double[] Amounts { get; init; }

    /// <summary>Lower end of the stretch of the free quantity that keeps the nominal rows and the wanted share; NaN without amounts.</summary>
    public double FreeLow { get; init; } = double.NaN;

    /// <summary>Upper end of that stretch; NaN without amounts.</summary>
    public double FreeHigh { get; init; } = double.NaN;

    /// <summary>The free quantity to use: middle of the best-covered part of that stretch nearest to the preferred value; NaN without amounts.</summary>
    public double Free { get; init; } = double.NaN;

    /// <summary>Share of the scenarios in which all rows hold at <see cref="Free"/>; 1 without scenarios, NaN without amounts.</summary>
    public double Share { get; init; } = double.NaN;

    /// <summary>Values of the objectives, [objective]; empty without amounts.</summary>
    public double[] Objectives { get; init; } = [];

    /// <summary>A value the first objective can provably not go below: equal to it when optimal, +∞ when infeasible.</summary>
    public double Bound { get; init; } = double.NegativeInfinity;

    /// <summary>Nodes of the tree that were visited, all stages together.</summary>
    public long Nodes { get; init; }

    /// <summary>Share of scenarios of the best trial met on the way; useful when nothing feasible was found (not proven best).</summary>
    public double BestShareSeen { get; init; } = double.NaN;

    /// <summary>True if the answer (optimum or infeasibility) is proven for this scenario set.</summary>
    public bool ProvenBest => Status is SearchStatus.Optimal or SearchStatus.Infeasible;
}
