namespace Heapwright.Web.Pages.Asking;

/// <summary>One answer of the conversation about signs, as it stands in the address.</summary>
/// <param name="Field">A field of <c>diagnose</c>, or <see cref="None"/>, <see cref="Unknown"/>, <see cref="Reading"/>.</param>
/// <param name="Word">The word; for <see cref="None"/> and <see cref="Unknown"/> the code of the question.</param>
public sealed record SignStep(string Field, string Word)
{
    /// <summary>Nothing of what a question asks for was found.</summary>
    public const string None = "none";

    /// <summary>The answer to a question is not known.</summary>
    public const string Unknown = "unknown";

    /// <summary>A probe in the core was read, °C.</summary>
    public const string Reading = "reading";

    /// <summary>The longest step that is read.</summary>
    public const int Longest = 80;

    /// <summary>As it stands in the address.</summary>
    public override string ToString() => $"{Field}:{Word}";

    /// <summary>Reads a step; null where it has not the form of one.</summary>
    /// <param name="text">The text.</param>
    public static SignStep? Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var colon = text.IndexOf(':', StringComparison.Ordinal);
        return
            text.Length <= Longest
            && colon > 0
            && colon < text.Length - 1
            && text.All(c =>
                char.IsAsciiLetterLower(c) || char.IsAsciiDigit(c) || "_.:-".Contains(c)
            )
            ? new SignStep(text[..colon], text[(colon + 1)..])
            : null;
    }
}
