using System.Collections.Immutable;
using Heapwright.Core.Materials;
using Heapwright.Core.Materials.Measurements;
using Heapwright.Core.Materials.Stock;
using Heapwright.Core.Reasons;

namespace Heapwright.App.Sites;

/// <summary>Something at hand as it is likely to be today: as measured here, and aged since it came in.</summary>
/// <param name="Entry">The entry in stock.</param>
/// <param name="Material">What it is now.</param>
/// <param name="Age">What happened to it in store; null where the material is not known.</param>
/// <param name="Changes">What measurements changed about it.</param>
/// <param name="Remarks">What to look at again in the measurements.</param>
public sealed record StuffAtHand(
    StockEntry Entry,
    Material Material,
    AgedMaterial Age,
    ImmutableArray<PropertyChange> Changes,
    ImmutableArray<Reason> Remarks
)
{
    /// <summary>An entry as it is likely to be today.</summary>
    /// <param name="contents">What the site has.</param>
    /// <param name="entry">The entry.</param>
    /// <param name="daysInStore">Days since it came in; a day to come counts as none.</param>
    /// <returns>Null where its material is not known.</returns>
    public static StuffAtHand? Of(SiteContents contents, StockEntry entry, int daysInStore)
    {
        ArgumentNullException.ThrowIfNull(contents);
        ArgumentNullException.ThrowIfNull(entry);
        if (contents.Material(entry.Material) is not { } material)
        {
            return null;
        }

        var measured = SiteMeasurements.Sharpen(contents, entry.Material, material);
        var age = StockAge.After(
            measured.Material,
            Math.Clamp(daysInStore, 0, StockAge.LongestDays)
        );
        return new StuffAtHand(entry, age.Material, age, measured.Changes, measured.Remarks);
    }
}
