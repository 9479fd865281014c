namespace Heapwright.Core.Readings.Deeds;

/// <summary>Part of the heap was taken away.</summary>
public sealed record SplitDeed : HeapDeed
{
    /// <summary>The share of the volume taken away, percent; above 0, below 100.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is outside its range.</exception>
    public required double SharePct
    {
        get;
        init =>
            field = value is > 0 and < 100
                ? value
                : throw new ArgumentOutOfRangeException(
                    nameof(value),
                    value,
                    "above 0 and below 100 is allowed"
                );
    }

    /// <summary>The heap it became, if that is kept too.</summary>
    public Guid? OtherHeap { get; init; }
}
