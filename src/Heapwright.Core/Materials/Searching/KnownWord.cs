namespace Heapwright.Core.Materials.Searching;

/// <summary>A word with what is needed to compare it quickly.</summary>
/// <param name="Stem">The word in its singular.</param>
/// <param name="Head">The head of its kin.</param>
/// <param name="Letters">One bit for every letter that occurs.</param>
internal sealed record KnownWord(string Stem, string Head, uint Letters)
{
    /// <summary>The word made ready.</summary>
    public static KnownWord Of(string stem)
    {
        var letters = 0u;
        foreach (var letter in stem)
        {
            letters |= 1u << (letter & 31);
        }

        return new KnownWord(stem, WordKin.Head(stem), letters);
    }
}
