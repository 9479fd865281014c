namespace Heapwright.Numerics.Search;

/// <summary>How far a search got, and what its answer is worth.</summary>
public enum SearchStatus
{
    /// <summary>The amounts are feasible and no better ones exist for this scenario set (proven).</summary>
    Optimal,

    /// <summary>The amounts are feasible, but the search ended (budget, or a method without proof) before it was shown that none are better.</summary>
    Feasible,

    /// <summary>No feasible amounts exist for this scenario set (proven).</summary>
    Infeasible,

    /// <summary>The search ended without finding feasible amounts and without proving that there are none.</summary>
    Unknown,
}
