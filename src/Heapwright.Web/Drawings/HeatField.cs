namespace Heapwright.Web.Drawings;

/// <summary>
/// The warmth across a heap between the middles of its zones: a smooth surface through them, which never overshoots, and
/// the lines along which it is equally warm. Across runs from −1 at one side over 0 in the middle to 1; up from 0 on the
/// ground to 1 on top.
/// </summary>
public sealed class HeatField
{
    private const int Columns = 41;
    private const int Rows = 25;
    private const double Outside = -1e6; // colder than anything, so that every line closes along the edge
    private readonly double[,] celsius = new double[Columns + 2, Rows + 2];

    /// <summary>A field through the middles of zones.</summary>
    /// <param name="centres">Centres of the rings, 0 to 1, ascending.</param>
    /// <param name="edges">Where layers end, from 0 to 1.</param>
    /// <param name="zone">The temperature of a ring and layer, °C.</param>
    /// <param name="air">The air, °C: the skin is drawn no colder than it, or no warmer where the heap is colder.</param>
    public HeatField(double[] centres, double[] edges, Func<int, int, double> zone, double air)
    {
        ArgumentNullException.ThrowIfNull(centres);
        ArgumentNullException.ThrowIfNull(edges);
        ArgumentNullException.ThrowIfNull(zone);
        var layers = edges.Length - 1;
        double[] across = [-centres[0], .. centres, 1];
        double[] up =
        [
            0,
            .. Enumerable.Range(0, layers).Select(k => (edges[k] + edges[k + 1]) / 2),
            1,
        ];
        var byLayer = new double[layers + 2][];
        for (var k = 0; k < layers; k++)
        {
            double[] t =
            [
                zone(0, k),
                .. Enumerable.Range(0, centres.Length).Select(r => zone(r, k)),
            ];
            var skin = Beyond(t[^2], t[^1], centres[^2], centres[^1], 1, air);
            byLayer[k + 1] = Smooth(across, [.. t, skin], Columns / 2 + 1);
        }

        var half = Columns / 2;
        byLayer[0] = new double[half + 1];
        byLayer[^1] = new double[half + 1];
        for (var i = 0; i <= half; i++)
        {
            byLayer[0][i] = Beyond(byLayer[2][i], byLayer[1][i], up[2], up[1], 0, air);
            byLayer[^1][i] = Beyond(byLayer[^3][i], byLayer[^2][i], up[^3], up[^2], 1, air);
        }

        for (var i = 0; i <= half; i++)
        {
            var column = Smooth(up, [.. byLayer.Select(l => l[i])], Rows);
            for (var j = 0; j < Rows; j++)
            {
                celsius[half + i + 1, j + 1] = column[j];
                celsius[half - i + 1, j + 1] = column[j];
            }
        }

        for (var i = 0; i < Columns + 2; i++)
        {
            celsius[i, 0] = celsius[i, Rows + 1] = Outside;
        }

        for (var j = 0; j < Rows + 2; j++)
        {
            celsius[0, j] = celsius[Columns + 1, j] = Outside;
        }
    }

    /// <summary>The hottest place, °C.</summary>
    public double Hottest => celsius.Cast<double>().Max();

    /// <summary>The coldest place, °C.</summary>
    public double Coldest => celsius.Cast<double>().Where(t => t > Outside / 2).Min();

    /// <summary>The edges of all that is as warm as a level or warmer, as closed lines.</summary>
    /// <param name="level">°C.</param>
    public IEnumerable<IReadOnlyList<(double Across, double Up)>> Around(double level)
    {
        var next = new Dictionary<int, int>();
        for (var i = 0; i <= Columns; i++)
        {
            for (var j = 0; j <= Rows; j++)
            {
                Cross(i, j, level, next);
            }
        }

        while (next.Count > 0)
        {
            var start = next.Keys.Min();
            var loop = new List<(double, double)>();
            var at = start;
            while (next.Remove(at, out var to))
            {
                loop.Add(Place(at, level));
                at = to;
            }

            loop.Add(loop[0]);
            yield return loop;
        }
    }

    // The lines through one square, warm side to the right. An edge is numbered by its lower left node and its direction.
    private void Cross(int i, int j, double level, Dictionary<int, int> next)
    {
        int Flat(int x, int y) => 2 * ((x * (Rows + 2)) + y);
        int Steep(int x, int y) => Flat(x, y) + 1;
        var warm =
            (celsius[i, j] >= level ? 1 : 0)
            | (celsius[i + 1, j] >= level ? 2 : 0)
            | (celsius[i + 1, j + 1] >= level ? 4 : 0)
            | (celsius[i, j + 1] >= level ? 8 : 0);
        var (below, right, above, left) = (
            Flat(i, j),
            Steep(i + 1, j),
            Flat(i, j + 1),
            Steep(i, j)
        );
        switch (warm)
        {
            case 1:
                next[left] = below;
                break;
            case 2:
                next[below] = right;
                break;
            case 3:
                next[left] = right;
                break;
            case 4:
                next[right] = above;
                break;
            case 5:
                next[left] = below;
                next[right] = above;
                break;
            case 6:
                next[below] = above;
                break;
            case 7:
                next[left] = above;
                break;
            case 8:
                next[above] = left;
                break;
            case 9:
                next[above] = below;
                break;
            case 10:
                next[below] = right;
                next[above] = left;
                break;
            case 11:
                next[above] = right;
                break;
            case 12:
                next[right] = left;
                break;
            case 13:
                next[right] = below;
                break;
            case 14:
                next[below] = left;
                break;
            default:
                break;
        }
    }

    private (double Across, double Up) Place(int edge, double level)
    {
        var (node, steep) = Math.DivRem(edge, 2);
        var (i, j) = Math.DivRem(node, Rows + 2);
        var (a, b) =
            steep == 1 ? (celsius[i, j], celsius[i, j + 1]) : (celsius[i, j], celsius[i + 1, j]);
        var share = (level - a) / (b - a);
        var x = i + (steep == 1 ? 0 : share) - 1;
        var y = j + (steep == 1 ? share : 0) - 1;
        return (
            (2 * Math.Clamp(x, 0, Columns - 1) / (Columns - 1)) - 1,
            Math.Clamp(y, 0, Rows - 1) / (Rows - 1)
        );
    }

    // Straight on from two middles to the edge, but never past the air.
    private static double Beyond(
        double inner,
        double outer,
        double at,
        double next,
        double edge,
        double air
    )
    {
        var straight = outer + ((outer - inner) * (edge - next) / (next - at));
        return Math.Clamp(straight, Math.Min(outer, air), Math.Max(outer, air));
    }

    // A cubic through the points whose slope is the harmonic mean of its neighbours, or 0 at a turn: no overshoot.
    private static double[] Smooth(double[] x, double[] y, int count)
    {
        var n = x.Length;
        var chord = new double[n - 1];
        for (var k = 0; k < n - 1; k++)
        {
            chord[k] = (y[k + 1] - y[k]) / (x[k + 1] - x[k]);
        }

        var slope = new double[n];
        (slope[0], slope[^1]) = (chord[0], chord[^1]);
        for (var k = 1; k < n - 1; k++)
        {
            slope[k] =
                chord[k - 1] * chord[k] > 0
                    ? 2 * chord[k - 1] * chord[k] / (chord[k - 1] + chord[k])
                    : 0;
        }

        var fine = new double[count];
        var at = 0;
        for (var i = 0; i < count; i++)
        {
            var here = (double)i / (count - 1);
            while (at < n - 2 && here > x[at + 1])
            {
                at++;
            }

            var h = x[at + 1] - x[at];
            var t = (here - x[at]) / h;
            var (t2, t3) = (t * t, t * t * t);
            fine[i] =
                (((2 * t3) - (3 * t2) + 1) * y[at])
                + ((t3 - (2 * t2) + t) * h * slope[at])
                + (((3 * t2) - (2 * t3)) * y[at + 1])
                + ((t3 - t2) * h * slope[at + 1]);
        }

        return fine;
    }
}
