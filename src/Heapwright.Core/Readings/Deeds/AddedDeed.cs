using Heapwright.Core.Quantities;

namespace Heapwright.Core.Readings.Deeds;

/// <summary>Something was laid on top.</summary>
public sealed record AddedDeed : HeapDeed
{
    /// <summary>What; 1 to 60 materials.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is none, or too many.</exception>
    public required EquatableList<AddedStuff> Ingredients
    {
        get;
        init
        {
            EntryLimits.Within(value.Count, 1, EntryLimits.MostIngredients, nameof(Ingredients));
            field = value;
        }
    } = [];
}
