using Heapwright.Core.Materials;

namespace Heapwright.App.Sites;

/// <summary>How much something at hand is, roughly, for pictures and lists; questions work with the ranges.</summary>
public static class StockSize
{
    /// <summary>Typical loose litres; null where the unit or the density is not known.</summary>
    /// <param name="contents">What the site has.</param>
    /// <param name="entry">The entry.</param>
    public static double? Litres(SiteContents contents, StockEntry entry)
    {
        ArgumentNullException.ThrowIfNull(contents);
        ArgumentNullException.ThrowIfNull(entry);
        if (contents.Containers.Find(entry.Unit) is not { } unit)
        {
            return null;
        }

        if (!unit.IsMass)
        {
            return entry.Amount * unit.Size.Typical;
        }

        return
            contents.Material(entry.Material)?.Properties[MaterialProperty.BulkDensity]
                is { } density
            ? entry.Amount * unit.Size.Typical / density.Typical * 1000
            : null;
    }
}
