using Heapwright.Core.Readings;

namespace Heapwright.App.Diary.Tables;

/// <summary>The words by which people name a spot in a table.</summary>
internal static class TableSpots
{
    private static readonly Dictionary<string, ProbeSpot> Words = new(
        StringComparer.OrdinalIgnoreCase
    )
    {
        ["core"] = ProbeSpot.Core,
        ["middle"] = ProbeSpot.Core,
        ["centre"] = ProbeSpot.Core,
        ["center"] = ProbeSpot.Core,
        ["mitte"] = ProbeSpot.Core,
        ["side"] = ProbeSpot.Side,
        ["edge"] = ProbeSpot.Side,
        ["outer"] = ProbeSpot.Side,
        ["outside"] = ProbeSpot.Side,
        ["rand"] = ProbeSpot.Side,
        ["top"] = ProbeSpot.Top,
        ["oben"] = ProbeSpot.Top,
        ["base"] = ProbeSpot.Base,
        ["bottom"] = ProbeSpot.Base,
        ["unten"] = ProbeSpot.Base,
    };

    /// <summary>The spot of a word; null where it names none.</summary>
    /// <param name="word">The word.</param>
    public static ProbeSpot? Of(string word) =>
        Words.TryGetValue(word.Trim(), out var spot) ? spot : null;
}
