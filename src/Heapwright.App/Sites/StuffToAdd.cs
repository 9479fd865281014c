using System.Collections.Immutable;
using Heapwright.Core.Materials;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;
using NodaTime;

namespace Heapwright.App.Sites;

/// <summary>Something at hand that could be added to a heap, as it is today and as it came in.</summary>
/// <param name="Now">As it is likely to be today, and how much of it there is.</param>
/// <param name="AsItCame">The same before it lay in store.</param>
/// <param name="Days">Days in store.</param>
/// <param name="IsSpoiled">Whether the time within which it should be used is over.</param>
/// <param name="AtHand">Where it comes from.</param>
public sealed record StuffToAdd(
    Ingredient Now,
    Ingredient AsItCame,
    int Days,
    bool IsSpoiled,
    StuffAtHand AtHand
)
{
    /// <summary>What it is.</summary>
    public Material Material => AtHand.Material;

    /// <summary>Everything at hand of which there is some, its material and its measure known.</summary>
    /// <param name="contents">What the site has.</param>
    /// <param name="now">The present.</param>
    /// <param name="zone">The zone of the site.</param>
    public static ImmutableArray<StuffToAdd> Of(
        SiteContents contents,
        Instant now,
        DateTimeZone zone
    )
    {
        ArgumentNullException.ThrowIfNull(contents);
        return
        [
            .. contents
                .Stock.Where(e => e.Amount > 0)
                .Select(e => Of(contents, e, SiteDays.Since(e.Since, now, zone)))
                .OfType<StuffToAdd>(),
        ];
    }

    /// <summary>An entry in stock; null where its material or its measure is not known.</summary>
    /// <param name="contents">What the site has.</param>
    /// <param name="entry">The entry.</param>
    /// <param name="daysInStore">Days since it came in.</param>
    public static StuffToAdd? Of(SiteContents contents, StockEntry entry, int daysInStore)
    {
        ArgumentNullException.ThrowIfNull(contents);
        ArgumentNullException.ThrowIfNull(entry);
        if (
            contents.Containers.Find(entry.Unit) is not { } unit
            || StuffAtHand.Of(contents, entry, daysInStore) is not { } now
            || StuffAtHand.Of(contents, entry, 0) is not { } then
        )
        {
            return null;
        }

        Ingredient As(Material material) =>
            new()
            {
                Name = entry.Name,
                Material = material,
                Properties = material.Properties,
                Amount = Spread.Exact(entry.Amount),
                Unit = unit,
            };
        return new StuffToAdd(
            As(now.Material),
            As(then.Material),
            Math.Max(0, daysInStore),
            now.Age.Spoiled,
            now
        );
    }
}
