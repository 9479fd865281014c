using Heapwright.Core.Bins;

namespace Heapwright.Core.Simulation;

/// <summary>
/// How a heap is cut into zones: rings (nested squares, circles, or strips of a windrow) times layers from the ground
/// up. Zone number = layer · rings + ring, ring 0 in the middle, layer 0 on the ground.
/// </summary>
public sealed class HeapGrid
{
    // Below this a skin apart would be thinner than what a skin is, m.
    private const double Shallow = 0.4;
    private const double ThinnestLayer = 0.06; // m
    private const double Nearest = 0.05; // m

    private HeapGrid(
        BinShape shape,
        double length,
        double width,
        double height,
        double[] ringEdges,
        double[] layerEdges,
        double leastDistance
    )
    {
        LeastDistance = leastDistance;
        Shape = shape;
        Length = length;
        Width = width;
        Height = height;
        RingEdges = ringEdges;
        LayerEdges = layerEdges;
        Rings = ringEdges.Length - 1;
        Layers = layerEdges.Length - 1;
        var floor = shape is BinShape.Box or BinShape.Windrow
            ? length * width
            : Math.PI * length * length / 4;
        var girth = shape switch
        {
            BinShape.Box => 2 * (length + width),
            BinShape.Windrow => 2 * length,
            _ => Math.PI * length,
        };
        HalfWidth = shape == BinShape.Windrow ? width / 2 : 2 * floor / girth;
        PlanArea = new double[Rings];
        TopArea = new double[Rings];
        HeightShare = new double[Rings];
        Centroid = new double[Rings];
        FacePerimeter = new double[Rings];
        for (var r = 0; r < Rings; r++)
        {
            var (a, b) = (ringEdges[r], ringEdges[r + 1]);
            if (shape == BinShape.Windrow)
            {
                PlanArea[r] = floor * (b - a);
                Centroid[r] = (a + b) / 2;
                HeightShare[r] = 1 - (((b * b * b) - (a * a * a)) / (3 * (b - a)));
                FacePerimeter[r] = girth;
            }
            else
            {
                PlanArea[r] = floor * ((b * b) - (a * a));
                Centroid[r] = 2.0 / 3 * ((b * b * b) - (a * a * a)) / ((b * b) - (a * a));
                HeightShare[r] = shape == BinShape.Cone ? 1 - Centroid[r] : 1;
                FacePerimeter[r] = girth * b;
            }

            var slope = shape switch
            {
                BinShape.Cone => height / HalfWidth,
                BinShape.Windrow => 2 * height * Centroid[r] / HalfWidth,
                _ => 0,
            };
            TopArea[r] = PlanArea[r] * Math.Sqrt(1 + (slope * slope));
        }
    }

    /// <summary>The shape.</summary>
    public BinShape Shape { get; }

    /// <summary>Length or diameter, m.</summary>
    public double Length { get; }

    /// <summary>Width or diameter, m.</summary>
    public double Width { get; }

    /// <summary>Height in the middle when built, m.</summary>
    public double Height { get; }

    /// <summary>The number of rings.</summary>
    public int Rings { get; }

    /// <summary>The number of layers.</summary>
    public int Layers { get; }

    /// <summary>The number of zones.</summary>
    public int Zones => Rings * Layers;

    /// <summary>Shape [ring + 1]: where rings end, as shares of the half width.</summary>
    public double[] RingEdges { get; }

    /// <summary>Shape [layer + 1]: where layers end when built, as shares of the height.</summary>
    public double[] LayerEdges { get; }

    /// <summary>From the middle to the side, m; for a box twice the floor over its girth.</summary>
    public double HalfWidth { get; }

    /// <summary>
    /// Zones above one another count as at least so far apart, m: at the foot of a slope they lie nearer, where heat would
    /// pass so fast that it shortens the step many times, between zones that are alike anyway.
    /// </summary>
    public double LeastDistance { get; }

    /// <summary>Shape [ring]: floor area, m².</summary>
    public double[] PlanArea { get; }

    /// <summary>Shape [ring]: area of the surface on top, with its slope, m².</summary>
    public double[] TopArea { get; }

    /// <summary>Shape [ring]: mean height when built, as a share of the height in the middle.</summary>
    public double[] HeightShare { get; }

    /// <summary>Shape [ring]: centre of mass, as a share of the half width.</summary>
    public double[] Centroid { get; }

    /// <summary>Shape [ring]: length of the outer face of a ring, seen from above, m.</summary>
    public double[] FacePerimeter { get; }

    /// <summary>Whether the outermost ring stands against walls (or free air) with a vertical side.</summary>
    public bool HasSides => Shape is BinShape.Box or BinShape.Ring;

    /// <summary>Volume when built, m³.</summary>
    public double Volume
    {
        get
        {
            var sum = 0.0;
            for (var r = 0; r < Rings; r++)
            {
                sum += PlanArea[r] * HeightShare[r] * Height;
            }

            return sum;
        }
    }

    /// <summary>The number of a zone.</summary>
    /// <param name="ring">0 in the middle.</param>
    /// <param name="layer">0 on the ground.</param>
    public int Zone(int ring, int layer) => (layer * Rings) + ring;

    /// <summary>Volume of a zone when built, m³.</summary>
    /// <param name="zone">The zone.</param>
    public double ZoneVolume(int zone)
    {
        var (layer, ring) = Math.DivRem(zone, Rings);
        return PlanArea[ring]
            * HeightShare[ring]
            * Height
            * (LayerEdges[layer + 1] - LayerEdges[layer]);
    }

    /// <summary>
    /// The grid of a heap of a given volume in or on a bin: four rings and four layers with a thin skin, where the
    /// gradients are, unless a finer one is asked for. A heap below 40 cm has two to four even layers.
    /// </summary>
    /// <param name="bin">The bin; free shapes keep their slopes, walled ones their floor.</param>
    /// <param name="volume">Built volume, m³, above 0.</param>
    /// <param name="refinement">Each ring and layer is cut into this many; 1 is the usual grid.</param>
    public static HeapGrid Of(Bin bin, double volume, int refinement = 1)
    {
        ArgumentNullException.ThrowIfNull(bin);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(volume);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(refinement);
        var share = volume / bin.Volume.CubicMeters;
        var (length, width, height) = (bin.Length.Meters, bin.Width.Meters, bin.Height.Meters);
        switch (bin.Shape)
        {
            case BinShape.Box or BinShape.Ring:
                height *= share;
                break;
            case BinShape.Cone:
                var cubeRoot = Math.Cbrt(share);
                (length, width, height) = (length * cubeRoot, width * cubeRoot, height * cubeRoot);
                break;
            default:
                var root = Math.Sqrt(share);
                (width, height) = (width * root, height * root);
                break;
        }

        if (bin.Shape == BinShape.Box && width > length)
        {
            (length, width) = (width, length);
        }

        // At the foot of a slope zones are low, and in a shallow heap all are: thin ones would need steps many times shorter.
        var sloped = bin.Shape is BinShape.Cone or BinShape.Windrow;
        double[] layers =
            height < Shallow ? Even(Math.Clamp((int)(height / ThinnestLayer), 2, 4))
            : sloped ? [0, 0.2, 0.5, 0.8, 1]
            : [0, 0.15, 0.5, 0.85, 1];
        return new HeapGrid(
            bin.Shape,
            length,
            width,
            height,
            Refined(sloped ? [0, 0.4, 0.65, 0.85, 1] : [0, 0.45, 0.72, 0.9, 1], refinement),
            Refined(layers, refinement),
            Nearest / refinement
        );
    }

    /// <summary>The same rings and layers on the floor of another walled place.</summary>
    /// <param name="bin">The place; a box or a ring.</param>
    public HeapGrid On(Bin bin)
    {
        var there = Of(bin, Volume);
        return new HeapGrid(
            there.Shape,
            there.Length,
            there.Width,
            there.Height,
            RingEdges,
            LayerEdges,
            LeastDistance
        );
    }

    private static double[] Even(int layers) =>
        [.. Enumerable.Range(0, layers + 1).Select(k => (double)k / layers)];

    private static double[] Refined(double[] edges, int refinement)
    {
        var fine = new double[((edges.Length - 1) * refinement) + 1];
        for (var i = 0; i < fine.Length; i++)
        {
            var (whole, part) = Math.DivRem(i, refinement);
            fine[i] =
                part == 0
                    ? edges[whole]
                    : edges[whole] + ((edges[whole + 1] - edges[whole]) * part / refinement);
        }

        return fine;
    }
}
