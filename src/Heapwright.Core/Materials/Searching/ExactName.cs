namespace Heapwright.Core.Materials.Searching;

/// <summary>The material that is called exactly so, found without the index of all names.</summary>
internal static class ExactName
{
    /// <summary>The only material with a name of exactly these words; null if there is none or more than one.</summary>
    /// <param name="library">The library.</param>
    /// <param name="words">Anyone's words.</param>
    public static Material? Only(MaterialLibrary library, string words)
    {
        var plain = WordForms.Plain(words);
        if (plain.Count == 0)
        {
            return null;
        }

        Material? found = null;
        foreach (var material in library.All)
        {
            if (!IsCalled(material, plain))
            {
                continue;
            }

            if (found is not null)
            {
                return null;
            }

            found = material;
        }

        return found;
    }

    private static bool IsCalled(Material material, List<string> plain)
    {
        if (IsSame(material.Name, plain) || IsSame(SearchIndex.Spaced(material.Id), plain))
        {
            return true;
        }

        foreach (var name in material.AlsoCalled)
        {
            if (IsSame(name, plain))
            {
                return true;
            }
        }

        return false;
    }

    // Most names do not even hold the first word, which is seen without taking them apart.
    private static bool IsSame(string name, List<string> plain)
    {
        if (!MayHold(name, plain[0]))
        {
            return false;
        }

        var words = WordForms.Plain(name);
        if (words.Count != plain.Count)
        {
            return false;
        }

        for (var i = 0; i < words.Count; i++)
        {
            if (!string.Equals(words[i], plain[i], StringComparison.Ordinal))
            {
                return false;
            }
        }

        return true;
    }

    // Accents are taken off and apostrophes left out in plain words, so such names are looked at in any case.
    private static bool MayHold(string name, string word)
    {
        foreach (var letter in name)
        {
            if (letter is '\'' or > '\u007f')
            {
                return true;
            }
        }

        return name.Contains(word, StringComparison.OrdinalIgnoreCase);
    }
}
