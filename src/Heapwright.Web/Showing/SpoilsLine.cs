using Heapwright.App.Coming;
using Heapwright.App.Sites;

namespace Heapwright.Web.Showing;

/// <summary>Something at hand that will not wait.</summary>
/// <param name="Entry">What.</param>
/// <param name="Now">Whether its time is up.</param>
/// <param name="Text">The sentence.</param>
public sealed record SpoilsLine(StockEntry Entry, bool Now, string Text)
{
    /// <summary>The line for one entry; null where it keeps for longer than a week.</summary>
    /// <param name="contents">What the site has.</param>
    /// <param name="here">The site.</param>
    /// <param name="entry">The entry.</param>
    public static SpoilsLine? For(SiteContents contents, Here here, StockEntry entry) =>
        DaysLeft(contents, here, entry) is <= 7 and { } left
            ? new SpoilsLine(entry, left <= 0, Why(contents, entry, left))
            : null;

    private static string Why(SiteContents contents, StockEntry entry, int left)
    {
        var how =
            Say.TryOf("stock.how_" + contents.Material(entry.Material)?.SpoilsHow)
            ?? Say.Of("stock.how_spoils");
        return left switch
        {
            < 0 => Say.Of("stock.spoils_past", how),
            0 => Say.Of("stock.spoils_today", how),
            1 => Say.Of("stock.spoils_tomorrow", how),
            _ => Say.Of("stock.spoils_in", how, left),
        };
    }

    private static int? DaysLeft(SiteContents contents, Here here, StockEntry entry) =>
        ComingDays.SpoilsOn(contents, entry) is { } day ? -here.DaysSince(day) : null;
}
