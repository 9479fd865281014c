namespace Heapwright.Core.Readings.Deeds;

/// <summary>Rain fell on the heap.</summary>
public sealed record RainedDeed : HeapDeed
{
    /// <summary>Millimetres; 0 to 2000.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is outside its range.</exception>
    public required double Millimetres
    {
        get;
        init => field = EntryLimits.Within(value, 0, EntryLimits.MostRainMm, nameof(Millimetres));
    }
}
