using System.Numerics;

namespace Heapwright.Core.Materials.Searching;

/// <summary>How alike two words are when one may be cut short, run on or mistyped.</summary>
internal static class Slips
{
    /// <summary>0 for unlike words to 1 for equal ones.</summary>
    /// <param name="question">A word of the question.</param>
    /// <param name="library">A word of the library.</param>
    public static double Likeness(KnownWord question, KnownWord library)
    {
        var asked = question.Stem;
        var known = library.Stem;
        if (string.Equals(asked, known, StringComparison.Ordinal))
        {
            return 1;
        }

        if (string.Equals(question.Head, library.Head, StringComparison.Ordinal))
        {
            return 0.93;
        }

        if (asked.Length >= 3 && known.StartsWith(asked, StringComparison.Ordinal))
        {
            return 0.6 + (0.35 * asked.Length / known.Length);
        }

        if (
            known.Length >= 4
            && known.Length * 10 >= asked.Length * 7
            && asked.StartsWith(known, StringComparison.Ordinal)
        )
        {
            return 0.8;
        }

        // Each slip takes at most one letter away and brings one in: more than four differing letters are more than two slips.
        return BitOperations.PopCount(question.Letters ^ library.Letters) > 4
            ? 0
            : Mistyped(asked, known);
    }

    private static double Mistyped(string asked, string known)
    {
        var shorter = Math.Min(asked.Length, known.Length);
        if (shorter < 4 || Math.Abs(asked.Length - known.Length) > 2)
        {
            return 0;
        }

        // Fingers slip inside a word far more often than on its first letter.
        var sameStart = asked[0] == known[0] || (asked[0] == known[1] && asked[1] == known[0]);
        if (!sameStart && shorter < 6)
        {
            return 0;
        }

        return Distance(asked, known) switch
        {
            1 when !sameStart => 0.65,
            1 => shorter >= 5 ? 0.85 : 0.75,
            2 when shorter >= 7 && sameStart => 0.7,
            _ => 0,
        };
    }

    // Letters put in, taken out, changed or swapped with their neighbour; 3 stands for anything above 2.
    private static int Distance(string a, string b)
    {
        if (a.Length > 40 || b.Length > 40)
        {
            return 3;
        }

        var width = b.Length + 1;
        Span<int> rows = stackalloc int[3 * width];
        var before = rows[..width];
        var last = rows.Slice(width, width);
        var row = rows[(2 * width)..];
        for (var j = 0; j <= b.Length; j++)
        {
            last[j] = j;
        }

        for (var i = 1; i <= a.Length; i++)
        {
            row[0] = i;
            var least = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var cost = a[i - 1] == b[j - 1] ? 0 : 1;
                var next = Math.Min(Math.Min(last[j] + 1, row[j - 1] + 1), last[j - 1] + cost);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    next = Math.Min(next, before[j - 2] + 1);
                }

                row[j] = next;
                least = Math.Min(least, next);
            }

            if (least > 2)
            {
                return 3;
            }

            var freed = before;
            before = last;
            last = row;
            row = freed;
        }

        return last[b.Length];
    }
}
