namespace Heapwright.Core.Readings;

/// <summary>A photo of a heap. The image itself is kept beside the diary, under its hash.</summary>
public sealed record PhotoEntry : DiaryEntry
{
    /// <summary>What it shows, in the person's words; may be empty.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is too long.</exception>
    public string Caption
    {
        get;
        init => field = EntryLimits.Text(value, 0, EntryLimits.LongestNote, nameof(Caption));
    } = "";

    /// <summary>The SHA-256 of the bytes of the image: 64 small hexadecimal digits.</summary>
    /// <exception cref="ArgumentException">It is none.</exception>
    public required string ContentHash
    {
        get;
        init =>
            field = IsHash(value)
                ? value
                : throw new ArgumentException(
                    "64 small hexadecimal digits are needed",
                    nameof(value)
                );
    }

    /// <summary>Whether a text is such a hash.</summary>
    /// <param name="text">The text.</param>
    public static bool IsHash(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length == 64 && text.All(char.IsAsciiHexDigitLower);
    }
}
