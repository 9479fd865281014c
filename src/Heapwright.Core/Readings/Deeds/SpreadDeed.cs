namespace Heapwright.Core.Readings.Deeds;

/// <summary>Some of it was taken out and used on a bed.</summary>
public sealed record SpreadDeed : HeapDeed
{
    /// <summary>The bed, or another place; 1 to <see cref="EntryLimits.LongestBed"/> characters.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is empty or too long.</exception>
    public required string Bed
    {
        get;
        init => field = EntryLimits.Text(value, 1, EntryLimits.LongestBed, nameof(Bed));
    }

    /// <summary>Litres of compost; 0 to 100,000.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is outside its range.</exception>
    public required double Litres
    {
        get;
        init => field = EntryLimits.Within(value, 0, EntryLimits.MostLitres, nameof(Litres));
    }
}
