using Heapwright.Core.Mixtures;

namespace Heapwright.Core.Recipes;

/// <summary>One amount that the search decides: so many steps of an item.</summary>
/// <param name="Item">The item.</param>
/// <param name="Step">Units of the item in one step.</param>
/// <param name="Least">The least number of steps.</param>
/// <param name="Most">The most steps.</param>
/// <param name="IsContinuous">Whether fractions of a step may be used.</param>
/// <param name="Typical">What one step holds at the typical values.</param>
/// <param name="Cases">Shape [scenario]: what one step holds.</param>
internal sealed record RecipeVariable(
    RecipeItem Item,
    double Step,
    double Least,
    double Most,
    bool IsContinuous,
    MassBalance Typical,
    MassBalance[] Cases
)
{
    /// <summary>Litres of one step, loose.</summary>
    public double Litres => Typical.LooseVolume;

    /// <summary>Price of one step.</summary>
    public double Price => Item.IsPurchase ? Item.Price * Step : 0;

    /// <summary>Minutes to carry and prepare one step.</summary>
    /// <remarks>An estimate: 4 minutes for 100 l, 10 where it must be cut up or torn.</remarks>
    public double Minutes
    {
        get
        {
            var cut =
                Item.Ingredient.Material?.Prepare.Any(p =>
                    p is "chop_short" or "shred" or "tear" or "crush"
                ) ?? false;
            return Litres * (cut ? 0.10 : 0.04);
        }
    }

    /// <summary>Litres of one step, counted by how soon they spoil.</summary>
    public double Perishing =>
        Item is { IsPurchase: false, SpoilsInDays: { } days } ? Litres / (1 + days) : 0;
}
