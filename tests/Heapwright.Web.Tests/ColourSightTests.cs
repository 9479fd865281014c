using System.Globalization;

namespace Heapwright.Web.Tests;

/// <summary>
/// The colours of warmth as people see them who lack one kind of cone. The sums for their sight are those of Viénot, Brettel
/// and Mollon (1999, Digital video colourmaps for checking the legibility of displays by dichromats), from memory, on
/// linear light; how far two colours lie apart is CIE 1976 ΔE, where 2.3 is just to be seen (Mahy and others 1994, from
/// memory). Three times that is asked for here, a choice of our own.
/// </summary>
public sealed class ColourSightTests
{
    private const double JustSeen = 2.3;

    private static readonly double[][] Full =
    [
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
    ];

    private static readonly double[][] WithoutRed =
    [
        [0.11238, 0.88762, 0],
        [0.11238, 0.88762, 0],
        [0.00401, -0.00401, 1],
    ];

    private static readonly double[][] WithoutGreen =
    [
        [0.29275, 0.70725, 0],
        [0.29275, 0.70725, 0],
        [-0.02234, 0.02234, 1],
    ];

    private static readonly double[][] Grey =
    [
        [0.2126, 0.7152, 0.0722],
        [0.2126, 0.7152, 0.0722],
        [0.2126, 0.7152, 0.0722],
    ];

    [Theory]
    [InlineData("full")]
    [InlineData("without red")]
    [InlineData("without green")]
    [InlineData("grey")]
    public void HeatScale_Neighbours_AreToldApart(string sight)
    {
        var sees = sight switch
        {
            "without red" => WithoutRed,
            "without green" => WithoutGreen,
            "grey" => Grey,
            _ => Full,
        };
        var seen = Drawings.HeatScale.Colours.Select(c => Lab(Through(sees, Linear(c)))).ToList();

        for (var i = 1; i < seen.Count; i++)
        {
            var apart = Math.Sqrt(seen[i].Zip(seen[i - 1], (a, b) => (a - b) * (a - b)).Sum());
            TestContext.Current.TestOutputHelper?.WriteLine($"{i}: {apart:0.0}");
            Assert.True(
                apart >= 3 * JustSeen,
                $"{sight}: {Drawings.HeatScale.Colours[i - 1]} and {Drawings.HeatScale.Colours[i]} are {apart:0.0} apart"
            );
        }
    }

    /// <summary>Red and green of the same lightness: the sums must bring them together, or the test above says nothing.</summary>
    [Fact]
    public void Sight_WithoutGreen_MixesUpARedAndAGreen()
    {
        double[] red = [0.35, 0.10, 0.05];
        double[] green = [0.10, 0.2035, 0.05];

        double Apart(double[][] sees) =>
            Math.Sqrt(
                Lab(Through(sees, red))
                    .Zip(Lab(Through(sees, green)), (a, b) => (a - b) * (a - b))
                    .Sum()
            );

        Assert.True(Apart(Full) > 50);
        Assert.True(Apart(WithoutGreen) < 3 * JustSeen);
    }

    private static double[] Linear(string colour) =>
        [
            .. new[] { 1, 3, 5 }.Select(at =>
            {
                var value =
                    int.Parse(
                        colour.AsSpan(at, 2),
                        NumberStyles.HexNumber,
                        CultureInfo.InvariantCulture
                    ) / 255.0;
                return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
            }),
        ];

    private static double[] Through(double[][] sees, double[] light) =>
        [.. sees.Select(row => Math.Clamp(row.Zip(light, (a, b) => a * b).Sum(), 0, 1))];

    // IEC 61966-2-1 (sRGB) to CIE XYZ under D65, and CIE 1976 L*a*b*; both printed.
    private static double[] Lab(double[] light)
    {
        double F(double x, double y, double z, double white)
        {
            var t = ((x * light[0]) + (y * light[1]) + (z * light[2])) / white;
            return t > 0.008856 ? Math.Cbrt(t) : (7.787 * t) + (16.0 / 116);
        }

        var (fx, fy, fz) = (
            F(0.4124, 0.3576, 0.1805, 0.9505),
            F(0.2126, 0.7152, 0.0722, 1),
            F(0.0193, 0.1192, 0.9505, 1.089)
        );
        return [(116 * fy) - 16, 500 * (fx - fy), 200 * (fy - fz)];
    }
}
