using Heapwright.Core.Quantities;

namespace Heapwright.Core.Readings.Deeds;

/// <summary>A test was begun, or its result was read.</summary>
public sealed record TestedDeed : HeapDeed
{
    /// <summary>Which test.</summary>
    public required HomeTest Test { get; init; }

    /// <summary>What was read, in the fields of <c>finish</c>, at most 40; empty where the test was only begun.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There are too many.</exception>
    public EquatableList<TestValue> Values
    {
        get;
        init
        {
            EntryLimits.Within(value.Count, 0, EntryLimits.MostWords, nameof(Values));
            field = value;
        }
    } = [];

    /// <summary>Whether it was only begun.</summary>
    public bool IsBegun => Values.Count == 0;
}
