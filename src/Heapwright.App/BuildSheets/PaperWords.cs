namespace Heapwright.App.BuildSheets;

/// <summary>The sizes of paper in the words in which they are asked for.</summary>
public static class PaperWords
{
    /// <summary>The size; A4 for anything but <c>letter</c>.</summary>
    /// <param name="word">The word; null where none was said.</param>
    public static PaperSize Of(string? word) => word == "letter" ? PaperSize.Letter : PaperSize.A4;
}
