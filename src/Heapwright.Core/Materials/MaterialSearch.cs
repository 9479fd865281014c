using Heapwright.Core.Materials.Searching;

namespace Heapwright.Core.Materials;

/// <summary>Finds materials by anyone's words.</summary>
public static class MaterialSearch
{
    // Below this share of the best, a find has only a side word in common.
    private const double ShareOfBest = 0.55;

    // Half of the words of a name, all of the question found in it: less may be a side word of another thing.
    private const double Confident = 0.85;
    private const double MostWordsFound = 0.78;
    private const double ClearLead = 0.04;

    /// <summary>
    /// The materials whose names fit the words, best first. Case, accents, punctuation, plural, order of words, words cut
    /// short, one word or two, and slips of one or two letters are forgiven; an exact name beats everything. Words of other
    /// languages find what they name as well.
    /// </summary>
    /// <param name="library">The library to search.</param>
    /// <param name="text">Anyone's words; the first 200 characters count.</param>
    /// <param name="most">The most materials to return; 1 or more.</param>
    /// <returns>Empty when nothing fits. Always in the same order for the same words.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="most"/> is below 1.</exception>
    public static IReadOnlyList<Material> Search(
        MaterialLibrary library,
        string text,
        int most = 20
    )
    {
        ArgumentNullException.ThrowIfNull(library);
        ArgumentNullException.ThrowIfNull(text);
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        var own = Fit(new SearchQuestion(library.Index, text).Rank());
        var other = Elsewhere(library, text);
        var hits = !Leads(other, own)
            ? own
            : Fit(other).Concat(own.Where(h => h.Tier > 0)).DistinctBy(h => h.Material);
        return [.. hits.Take(most).Select(h => library.All[h.Material])];
    }

    /// <summary>The one material meant by anyone's words, or null where that is not clear.</summary>
    /// <param name="library">The library to search.</param>
    /// <param name="anyonesWords">Anyone's words, such as the name of an ingredient.</param>
    /// <returns>
    /// The material, when its name is exactly that, or fits well and no material of another family fits nearly as well.
    /// </returns>
    public static Material? CloseMatch(MaterialLibrary library, string anyonesWords)
    {
        ArgumentNullException.ThrowIfNull(library);
        ArgumentNullException.ThrowIfNull(anyonesWords);
        // One exact name beats everything, and is found without taking all names apart.
        if (ExactName.Only(library, anyonesWords) is { } only)
        {
            return only;
        }

        var own = new SearchQuestion(library.Index, anyonesWords).Rank();
        var other = Elsewhere(library, anyonesWords);
        return Clear(library, Leads(other, own) ? other : own);
    }

    private static Material? Clear(MaterialLibrary library, List<SearchHit> hits)
    {
        if (hits.Count == 0)
        {
            return null;
        }

        var best = hits[0];
        if (best.Tier == 0 && (best.Score < Confident || best.Named < MostWordsFound))
        {
            return null;
        }

        var family = library.All[best.Material].Family;
        foreach (var other in hits.Skip(1))
        {
            var near = other.Tier == best.Tier && other.Score > best.Score - ClearLead;
            if (
                near
                && !string.Equals(
                    library.All[other.Material].Family,
                    family,
                    StringComparison.Ordinal
                )
            )
            {
                return null;
            }
        }

        return library.All[best.Material];
    }

    private static List<SearchHit> Fit(List<SearchHit> hits) =>
        hits.FindAll(h => h.Tier > 0 || h.Score >= ShareOfBest * hits[0].Score);

    private static List<SearchHit> Elsewhere(MaterialLibrary library, string text) =>
        library.IndexElsewhere is { } index ? new SearchQuestion(index, text).Rank() : [];

    // Words of another language count only where they fit clearly better than those of the library's own.
    private static bool Leads(List<SearchHit> other, List<SearchHit> own) =>
        other.Count > 0
        && (
            own.Count == 0
            || other[0].Tier > own[0].Tier
            || (other[0].Tier == own[0].Tier && other[0].Score > own[0].Score + ClearLead)
        );
}
