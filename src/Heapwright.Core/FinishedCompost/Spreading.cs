namespace Heapwright.Core.FinishedCompost;

/// <summary>How far compost goes: depth, area and volume by plain geometry.</summary>
public static class Spreading
{
    private const double LitresPerSquareMetreAndCentimetre = 10;

    /// <summary>Litres for an area and a depth: 10 A d.</summary>
    /// <param name="squareMetres">m².</param>
    /// <param name="centimetres">cm.</param>
    public static double Litres(double squareMetres, double centimetres) =>
        LitresPerSquareMetreAndCentimetre * squareMetres * centimetres;

    /// <summary>The depth in cm that a volume reaches on an area.</summary>
    /// <param name="litres">Litres.</param>
    /// <param name="squareMetres">m², above 0.</param>
    public static double Centimetres(double litres, double squareMetres) =>
        litres / (LitresPerSquareMetreAndCentimetre * squareMetres);

    /// <summary>The area in m² that a volume covers at a depth.</summary>
    /// <param name="litres">Litres.</param>
    /// <param name="centimetres">cm, above 0.</param>
    public static double SquareMetres(double litres, double centimetres) =>
        litres / (LitresPerSquareMetreAndCentimetre * centimetres);
}
