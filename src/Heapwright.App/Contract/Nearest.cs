namespace Heapwright.App.Contract;

/// <summary>The nearest of some words to a word mistyped.</summary>
public static class Nearest
{
    /// <summary>The word with the smallest edit distance; the first of them on a tie.</summary>
    /// <param name="word">The word as typed.</param>
    /// <param name="words">The words known, at least one.</param>
    public static string Of(string word, ReadOnlySpan<string> words)
    {
        var best = "";
        var least = int.MaxValue;
        foreach (var candidate in words)
        {
            var distance = Distance(word, candidate);
            if (distance < least)
            {
                (best, least) = (candidate, distance);
            }
        }

        return best;
    }

    /// <summary>How many letters must be put in, taken out or changed to make one word of the other, case aside.</summary>
    /// <param name="a">A word; at most 100 letters count.</param>
    /// <param name="b">Another word; at most 100 letters count.</param>
    public static int Distance(string a, string b)
    {
        var left = a.AsSpan(0, Math.Min(a.Length, 100));
        var right = b.AsSpan(0, Math.Min(b.Length, 100));
        var row = new int[right.Length + 1];
        for (var j = 0; j <= right.Length; j++)
        {
            row[j] = j;
        }

        for (var i = 1; i <= left.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= right.Length; j++)
            {
                var same =
                    char.ToLowerInvariant(left[i - 1]) == char.ToLowerInvariant(right[j - 1]);
                var next = Math.Min(
                    Math.Min(row[j] + 1, row[j - 1] + 1),
                    diagonal + (same ? 0 : 1)
                );
                diagonal = row[j];
                row[j] = next;
            }
        }

        return row[^1];
    }
}
