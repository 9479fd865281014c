namespace Heapwright.App.Drawings;

/// <summary>The colours of a picture: plain in a file, custom properties of the page within one.</summary>
internal static class SvgColours
{
    public const string OnWhite = "#22271d";

    public static string Of(PictureTone tone, SvgUse use) =>
        tone switch
        {
            PictureTone.Ink => Of("ink", "#22271d", use),
            PictureTone.Soft => Of("soft", "#565b4b", use),
            PictureTone.Water => Of("heap-water", "#2b6ea3", use),
            PictureTone.Wall => Of("heap-wall", "#8b6b4a", use),
            _ => OnWhite,
        };

    public static string Of(string property, string plain, SvgUse use) =>
        use == SvgUse.Page ? $"var(--{property}, {plain})" : plain;
}
