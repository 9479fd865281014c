namespace Heapwright.App.BuildSheets;

/// <summary>The paper a sheet is printed on.</summary>
public enum PaperSize
{
    /// <summary>210 × 297 mm.</summary>
    A4,

    /// <summary>8½ × 11 in.</summary>
    Letter,
}
