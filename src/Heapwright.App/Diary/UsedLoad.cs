using System.Collections.Immutable;
using Heapwright.App.Sites;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;

namespace Heapwright.App.Diary;

/// <summary>A load of the stock that went into a heap.</summary>
/// <param name="Stuff">What went in, with where it came from.</param>
/// <param name="Rest">What is left of it in the stock; null where the measures differ, so that nobody can tell.</param>
public sealed record UsedLoad(AddedStuff Stuff, StockEntry? Rest)
{
    /// <summary>The loads of a stock that a heap was built of, known by their names.</summary>
    /// <param name="heap">The heap.</param>
    /// <param name="stock">The stock.</param>
    public static ImmutableArray<UsedLoad> Of(KeptHeap heap, IReadOnlyList<StockEntry> stock)
    {
        ArgumentNullException.ThrowIfNull(heap);
        ArgumentNullException.ThrowIfNull(stock);
        return
        [
            .. Contract
                .HeapReader.Read(heap)
                .Ingredients.Where(i => i.Amount.Typical > 0)
                .Select(i => (Part: i, Load: stock.FirstOrDefault(s => Is(s, i))))
                .Where(u => u.Load is not null)
                .DistinctBy(u => u.Load!.Id)
                .Take(EntryLimits.MostIngredients)
                .Select(u => Used(u.Part, u.Load!)),
        ];
    }

    /// <summary>Something taken from a load, with where it came from.</summary>
    /// <param name="load">The load.</param>
    /// <param name="amount">How many of the unit.</param>
    /// <param name="unit">The unit.</param>
    public static AddedStuff StuffOf(StockEntry load, double amount, string unit)
    {
        ArgumentNullException.ThrowIfNull(load);
        return new AddedStuff
        {
            Material = MaterialKey.OwnId(load.Material) is null ? load.Material : "",
            Name = load.Name,
            Value = amount,
            Unit = unit,
            Giver = load.Giver,
            Since = load.Since.ToDateOnly(),
        };
    }

    private static bool Is(StockEntry load, Ingredient part) =>
        string.Equals(load.Name, part.Name, StringComparison.OrdinalIgnoreCase)
        && (
            MaterialKey.OwnId(load.Material) is not null
            || part.Material is null
            || part.Material.Id == load.Material
        );

    private static UsedLoad Used(Ingredient part, StockEntry load)
    {
        var amount = part.Amount.Typical;
        var isSame = string.Equals(load.Unit, part.Unit.Unit, StringComparison.OrdinalIgnoreCase);
        return new UsedLoad(
            StuffOf(load, amount, part.Unit.Unit),
            isSame ? load with { Amount = Math.Max(0, load.Amount - amount) } : null
        );
    }
}
