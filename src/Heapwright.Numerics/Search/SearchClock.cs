namespace Heapwright.Numerics.Search;

/// <summary>Counts nodes against a budget, over all stages of one call.</summary>
internal sealed class SearchClock
{
    private const long Interval = 256;
    private readonly SearchBudget _budget;
    private long _ask = Interval;

    internal SearchClock(SearchBudget budget)
    {
        budget.Check();
        _budget = budget;
    }

    /// <summary>Nodes so far.</summary>
    internal long Nodes { get; private set; }

    /// <summary>True once the budget is used up.</summary>
    internal bool Ended { get; private set; }

    /// <summary>Counts one node; false if the budget is used up.</summary>
    internal bool Count()
    {
        if (Ended)
        {
            return false;
        }

        if (Nodes >= _budget.Nodes)
        {
            Ended = true;
            return false;
        }

        Nodes++;
        if (Nodes >= _ask)
        {
            _ask = Nodes + Interval;
            Ended =
                _budget.Cancellation.IsCancellationRequested || (_budget.Stop?.Invoke() ?? false);
        }

        return !Ended;
    }
}
