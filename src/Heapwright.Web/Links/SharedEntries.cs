using Heapwright.App.Diary;
using Heapwright.App.Library;
using Heapwright.App.Sites;
using Heapwright.Core.Amounts;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;
using Heapwright.Web.Showing;

namespace Heapwright.Web.Links;

/// <summary>
/// The entries of a diary as strangers may read them: no words that people typed freely, so no names of givers, beds and
/// instruments, no notes, and no photos. Stuff is called by the name of its material.
/// </summary>
internal static class SharedEntries
{
    /// <summary>What stands in a diary, the newest first, each in one line.</summary>
    /// <param name="record">The heap.</param>
    /// <param name="contents">What the site has.</param>
    /// <param name="show">How quantities are shown.</param>
    public static IEnumerable<(DateTimeOffset At, string Text)> Of(
        HeapRecord record,
        SiteContents contents,
        Shown show
    ) =>
        record
            .Diary.Standing.Reverse()
            .Select(s => (s.Entry.At, Entry: Plain(s.Entry, contents)))
            .Where(e => e.Entry is not null)
            .Select(e => (e.At, EntryText.Of(e.Entry!, show.Measures)));

    /// <summary>What a heap was built of, by the names of the materials.</summary>
    /// <param name="record">The heap.</param>
    /// <param name="show">How quantities are shown.</param>
    public static IEnumerable<(string Name, string Amount)> Stuff(HeapRecord record, Shown show) =>
        record
            .Heap()
            .Ingredients.Select(i =>
                (
                    i.Material?.Name ?? Say.Of("share.stuff"),
                    show.Amount(i.Amount.Typical, UnitOf(i.Unit.Unit))
                )
            );

    private static DiaryEntry? Plain(DiaryEntry entry, SiteContents contents) =>
        entry switch
        {
            TemperatureEntry reading => reading with { Instrument = "" },
            SignEntry => entry,
            EventEntry happening => happening with { Deed = Plain(happening.Deed, contents) },
            _ => null,
        };

    private static HeapDeed Plain(HeapDeed deed, SiteContents contents) =>
        deed switch
        {
            BuiltDeed built => built with
            {
                Loads = [.. built.Loads.Select(l => Plain(l, contents))],
            },
            AddedDeed added => added with
            {
                Ingredients = [.. added.Ingredients.Select(i => Plain(i, contents))],
            },
            SpreadDeed spread => spread with { Bed = Say.Of("share.a_bed") },
            _ => deed,
        };

    private static AddedStuff Plain(AddedStuff stuff, SiteContents contents) =>
        stuff with
        {
            Name = NameOf(stuff.Material, contents),
            Unit = UnitOf(stuff.Unit),
            Giver = "",
        };

    // A measure of their own may be called after its owner.
    private static string UnitOf(string unit) =>
        MeasureUnits.Find(unit) is not null || UsualContainers.Set.Find(unit) is not null
            ? unit
            : Say.Of("share.measure");

    private static string NameOf(string material, SiteContents contents) =>
        contents.Material(material)?.Name ?? Say.Of("share.stuff");
}
