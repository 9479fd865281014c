using System.Globalization;

namespace Heapwright.App.Contract;

/// <summary>The question is wrong in one place: what was found there and what is allowed, in one sentence.</summary>
public sealed class InputProblem : Exception
{
    /// <summary>A problem at a place.</summary>
    /// <param name="file">The file, or another name for where the question came from.</param>
    /// <param name="place">The place in it, such as <c>ingredients[1].amount.unit</c>; may be empty.</param>
    /// <param name="sentence">What was found and what is allowed.</param>
    public InputProblem(string file, string place, string sentence)
        : base(OneLine(place.Length == 0 ? $"{file}: {sentence}" : $"{file}: {place}: {sentence}"))
    {
        File = file;
        Place = place;
    }

    /// <summary>The file, or another name for where the question came from.</summary>
    public string File { get; }

    /// <summary>The place in it; may be empty.</summary>
    public string Place { get; }

    // A value found in the input may hold line breaks or control characters; the message stays one clear line.
    private static string OneLine(string text)
    {
        var clean = string.Create(
            Math.Min(text.Length, 600),
            text,
            static (span, s) =>
            {
                for (var i = 0; i < span.Length; i++)
                {
                    span[i] = BreaksLine(s[i]) ? ' ' : s[i];
                }
            }
        );
        return clean;
    }

    private static bool BreaksLine(char letter) =>
        char.GetUnicodeCategory(letter)
            is UnicodeCategory.Control
                or UnicodeCategory.Surrogate
                or UnicodeCategory.Format
                or UnicodeCategory.LineSeparator
                or UnicodeCategory.ParagraphSeparator;
}
