using Heapwright.Core.Quantities;

namespace Heapwright.Core.Readings.Deeds;

/// <summary>The heap was finished.</summary>
public sealed record BuiltDeed : HeapDeed
{
    /// <summary>The loads it was built of, as far as they stood in the stock; at most 60.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There are too many.</exception>
    public EquatableList<AddedStuff> Loads
    {
        get;
        init
        {
            EntryLimits.Within(value.Count, 0, EntryLimits.MostIngredients, nameof(Loads));
            field = value;
        }
    } = [];
}
