using System.Globalization;
using UnitsNet;

namespace Heapwright.Core.Bins;

/// <summary>What holds a heap, or the outline of a heap without walls; sizes are inside sizes.</summary>
public sealed record Bin
{
    /// <summary>What lies lower than this is spread out, not built: no heap, and nothing to simulate. Metres.</summary>
    /// <remarks>An estimate of our own: it is colder than anybody would call a heap, and its layers are a few millimetres.</remarks>
    public const double LowestHeap = 0.05;

    private Bin(BinShape shape, Length length, Length width, Length height)
    {
        Shape = shape;
        Length = length;
        Width = width;
        Height = height;
    }

    /// <summary>The shape.</summary>
    public BinShape Shape { get; }

    /// <summary>Inside length; the diameter of a ring or cone.</summary>
    public Length Length { get; }

    /// <summary>Inside width; the diameter of a ring or cone.</summary>
    public Length Width { get; }

    /// <summary>Height to which it may be filled.</summary>
    public Length Height { get; }

    /// <summary>A box with straight walls.</summary>
    /// <param name="length">0.1 to 100 m.</param>
    /// <param name="width">0.1 to 100 m.</param>
    /// <param name="height">0.1 to 10 m.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is outside its range.</exception>
    public static Bin Box(Length length, Length width, Length height) =>
        new(BinShape.Box, Side(length, nameof(length)), Side(width, nameof(width)), Tall(height));

    /// <summary>A windrow, parabolic in cross-section.</summary>
    /// <param name="length">0.1 to 100 m.</param>
    /// <param name="width">Width at the base, 0.1 to 100 m.</param>
    /// <param name="height">0.1 to 10 m.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is outside its range.</exception>
    public static Bin Windrow(Length length, Length width, Length height) =>
        new(
            BinShape.Windrow,
            Side(length, nameof(length)),
            Side(width, nameof(width)),
            Tall(height)
        );

    /// <summary>A ring of wire or a round bin.</summary>
    /// <param name="diameter">0.1 to 100 m.</param>
    /// <param name="height">0.1 to 10 m.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is outside its range.</exception>
    public static Bin Ring(Length diameter, Length height) =>
        new(BinShape.Ring, Side(diameter, nameof(diameter)), diameter, Tall(height));

    /// <summary>A free cone.</summary>
    /// <param name="diameter">Base diameter, 0.1 to 100 m.</param>
    /// <param name="height">0.1 to 10 m.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is outside its range.</exception>
    public static Bin Cone(Length diameter, Length height) =>
        new(BinShape.Cone, Side(diameter, nameof(diameter)), diameter, Tall(height));

    /// <summary>
    /// The volume: box l w h; ring π d² h/4; cone π d² h/12; windrow ⅔ l w h (a parabola; a triangle would
    /// underestimate and a rectangle overestimate it, New Jersey DEP leaf-composting manual, printed).
    /// </summary>
    public Volume Volume =>
        Volume.FromCubicMeters(
            Shape switch
            {
                BinShape.Box => Length.Meters * Width.Meters * Height.Meters,
                BinShape.Windrow => 2.0 / 3 * Length.Meters * Width.Meters * Height.Meters,
                BinShape.Ring => Math.PI * Length.Meters * Length.Meters * Height.Meters / 4,
                _ => Math.PI * Length.Meters * Length.Meters * Height.Meters / 12,
            }
        );

    /// <summary>The area of the floor it stands on.</summary>
    public Area Floor =>
        Area.FromSquareMeters(
            Shape is BinShape.Ring or BinShape.Cone
                ? Math.PI * Length.Meters * Length.Meters / 4
                : Length.Meters * Width.Meters
        );

    /// <summary>The height to which a volume fills it; above <see cref="Height"/> if it does not fit.</summary>
    /// <param name="volume">The volume of the heap.</param>
    /// <remarks>Shapes without walls keep their slopes: the height grows with the volume at fixed proportions.</remarks>
    public Length HeightFor(Volume volume)
    {
        var share = volume.CubicMeters / Volume.CubicMeters;
        return Shape switch
        {
            BinShape.Box or BinShape.Ring => Height * share,
            BinShape.Cone => Height * Math.Cbrt(share),
            _ => Height * Math.Sqrt(share),
        };
    }

    private static Length Side(Length value, string name) => Within(value, 0.1, 100, name);

    private static Length Tall(Length value) => Within(value, 0.1, 10, "height");

    private static Length Within(Length value, double lowest, double highest, string name)
    {
        if (!(value.Meters >= lowest && value.Meters <= highest))
        {
            throw new ArgumentOutOfRangeException(
                name,
                value.Meters,
                string.Create(CultureInfo.InvariantCulture, $"{lowest} to {highest} m is allowed")
            );
        }

        return value;
    }
}
