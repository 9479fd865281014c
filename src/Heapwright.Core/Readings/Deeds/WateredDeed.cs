namespace Heapwright.Core.Readings.Deeds;

/// <summary>Water was poured on.</summary>
public sealed record WateredDeed : HeapDeed
{
    /// <summary>Litres; 0 to 100,000.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is outside its range.</exception>
    public required double Litres
    {
        get;
        init => field = EntryLimits.Within(value, 0, EntryLimits.MostLitres, nameof(Litres));
    }
}
