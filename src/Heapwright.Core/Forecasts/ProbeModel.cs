using Heapwright.Core.Readings;
using Heapwright.Core.Simulation;

namespace Heapwright.Core.Forecasts;

/// <summary>What a probe would show in a simulated heap.</summary>
/// <remarks>
/// A probe in the core that is deep enough shows the core; one that is not, or stands elsewhere, shows the temperature
/// between the middles of the zones on its way in, and half of the excess over the air at the very surface.
/// </remarks>
internal static class ProbeModel
{
    private const double CoreDepth = 0.4; // of the height: from here on a probe is in the core
    private const double AtSurface = 0.5;

    /// <summary>What every member says of readings.</summary>
    /// <param name="run">The heap, run at least to the last reading.</param>
    /// <param name="readings">The readings.</param>
    /// <param name="offset">Shape [member]: what the thermometer shows too much, K.</param>
    /// <param name="deeper">Shape [member]: how much deeper it stands than noted, m.</param>
    /// <returns>Shape [reading][member]: °C.</returns>
    public static double[][] Predict(
        EnsembleRun run,
        IReadOnlyList<DigestedReading> readings,
        double[] offset,
        double[] deeper
    )
    {
        var core = Regions.Core(run.Grid);
        var predicted = new double[readings.Count][];
        for (var r = 0; r < predicted.Length; r++)
        {
            var reading = readings[r];
            var (before, after, share) = Between(run.Blocks[0].Looks, reading.Day);
            var weather = run.Question.Weather.At(reading.Day);
            var row = predicted[r] = new double[offset.Length];
            for (var i = 0; i < row.Length; i++)
            {
                var (b, lane) = Math.DivRem(i, HeapBlock.Lanes);
                var looks = run.Blocks[b].Looks;
                double At(int look) =>
                    reading.Moisture
                        ? looks[look].MoistureOf(lane)
                        : Temperature(
                            new Place(run.Grid, core, looks[look], lane),
                            reading.Spot,
                            reading.Depth is { } d ? Math.Max(d + deeper[i], 0) : null,
                            weather.Air,
                            run.Question.Weather.Ground
                        );
                row[i] =
                    ((1 - share) * At(before))
                    + (share > 0 ? share * At(after) : 0)
                    + (reading.Moisture ? 0 : offset[i]);
            }
        }

        return predicted;
    }

    /// <summary>The looks on both sides of a time; the first of two at the same time, for one reads before one turns.</summary>
    /// <returns>The number of the looks, and the weight of the second.</returns>
    public static (int Before, int After, double Share) Between(List<HeapLook> looks, double day)
    {
        var after = 0;
        while (after < looks.Count && looks[after].Day < day)
        {
            after++;
        }

        if (after >= looks.Count)
        {
            return (looks.Count - 1, looks.Count - 1, 0);
        }

        if (after == 0 || looks[after].Day == day)
        {
            return (after, after, 0);
        }

        var (a, b) = (looks[after - 1].Day, looks[after].Day);
        return (after - 1, after, (day - a) / (b - a));
    }

    private static double Temperature(
        Place at,
        ProbeSpot spot,
        double? noted,
        double air,
        double ground
    )
    {
        if ((noted ?? ProbeDepths.Usual(spot)) is not { } depth)
        {
            return at.Core;
        }

        var grid = at.Grid;
        var height = Math.Max(at.Look.Height[at.Lane], 0.05);
        switch (spot)
        {
            case ProbeSpot.Side:
                var (first, last) = Middle(grid);
                double Ring(int r)
                {
                    var sum = 0.0;
                    for (var k = first; k <= last; k++)
                    {
                        sum += at.Zone(r, k);
                    }

                    return sum / (last - first + 1);
                }

                return Along(
                    depth,
                    Surface(Ring(grid.Rings - 1), air),
                    grid.Rings,
                    n => (1 - grid.Centroid[grid.Rings - 1 - n]) * grid.HalfWidth,
                    n => Ring(grid.Rings - 1 - n),
                    double.PositiveInfinity,
                    at.Core
                );
            case ProbeSpot.Base:
                return Along(
                    depth,
                    Surface(at.Zone(0, 0), ground),
                    grid.Layers,
                    n => height * (grid.LayerEdges[n] + grid.LayerEdges[n + 1]) / 2,
                    n => at.Zone(0, n),
                    CoreDepth * height,
                    at.Core
                );
            default:
                return Along(
                    depth,
                    Surface(at.Zone(0, grid.Layers - 1), air),
                    grid.Layers,
                    n =>
                    {
                        var k = grid.Layers - 1 - n;
                        return height * (1 - ((grid.LayerEdges[k] + grid.LayerEdges[k + 1]) / 2));
                    },
                    n => at.Zone(0, grid.Layers - 1 - n),
                    CoreDepth * height,
                    at.Core
                );
        }
    }

    private static double Surface(double zone, double outside) =>
        outside + (AtSurface * (zone - outside));

    // Straight lines between the surface, the middles of the zones passed, and the core.
    private static double Along(
        double depth,
        double surface,
        int zones,
        Func<int, double> middle,
        Func<int, double> temperature,
        double coreDepth,
        double core
    )
    {
        var (lastDepth, last) = (0.0, surface);
        for (var n = 0; n < zones && middle(n) < coreDepth; n++)
        {
            var (d, t) = (middle(n), temperature(n));
            if (depth <= d)
            {
                return last + ((t - last) * (depth - lastDepth) / (d - lastDepth));
            }

            (lastDepth, last) = (d, t);
        }

        return depth >= coreDepth || double.IsInfinity(coreDepth)
            ? (double.IsInfinity(coreDepth) ? last : core)
            : last + ((core - last) * (depth - lastDepth) / (coreDepth - lastDepth));
    }

    private static (int First, int Last) Middle(HeapGrid grid)
    {
        var first = 0;
        while (first < grid.Layers - 1 && grid.LayerEdges[first + 1] <= 0.25)
        {
            first++;
        }

        var last = grid.Layers - 1;
        while (last > first && grid.LayerEdges[last] >= 0.78)
        {
            last--;
        }

        return (first, last);
    }

    private readonly struct Place(
        HeapGrid grid,
        (int Zone, double Weight)[] core,
        HeapLook look,
        int lane
    )
    {
        public HeapGrid Grid => grid;

        public HeapLook Look => look;

        public int Lane => lane;

        public double Core
        {
            get
            {
                var sum = 0.0;
                foreach (var (z, weight) in core)
                {
                    sum += weight * look.Celsius[z][lane];
                }

                return sum;
            }
        }

        public double Zone(int ring, int layer) => look.Celsius[grid.Zone(ring, layer)][lane];
    }
}
