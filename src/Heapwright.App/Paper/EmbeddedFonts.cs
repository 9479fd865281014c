using PdfSharp.Fonts;

namespace Heapwright.App.Paper;

/// <summary>The fonts that every PDF carries with it, so that it looks the same everywhere.</summary>
public sealed class EmbeddedFonts : IFontResolver
{
    /// <summary>The name of the family.</summary>
    public const string Family = "DejaVu Sans";

    private const string Plain = "DejaVuSans";
    private const string Bold = "DejaVuSans-Bold";

    private static readonly Lazy<bool> Set = new(() =>
    {
        GlobalFontSettings.FontResolver ??= new EmbeddedFonts();
        return true;
    });

    /// <summary>Makes the fonts known to the library that writes PDF; any number of times.</summary>
    public static void Use() => _ = Set.Value;

    /// <inheritdoc/>
    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) =>
        new(isBold ? Bold : Plain);

    /// <inheritdoc/>
    public byte[]? GetFont(string faceName)
    {
        using var stream =
            typeof(EmbeddedFonts).Assembly.GetManifestResourceStream($"fonts/{faceName}.ttf")
            ?? throw new InvalidOperationException("the font " + faceName + " is not embedded");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
