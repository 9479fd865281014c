using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Heapwright.Numerics.Odes;

namespace Heapwright.Core.Simulation;

/// <summary>
/// Eight members of an ensemble of one heap, in lock-step: their states, what is fixed for a zone between events, and
/// the equations that move them. Time in days, masses in kg, heat in J.
/// </summary>
/// <remarks>The equations in their order are in docs/models/heap.md, which has the same headings as the files.</remarks>
internal sealed partial class HeapBlock : ILockStepSystem
{
    /// <summary>The number of members in a block.</summary>
    public const int Lanes = 8;

    /// <summary>The number of sums kept, see <see cref="Total"/>.</summary>
    public const int Totals = (int)Total.WaterHeatIn + 1;

    // The states of a zone.
    public const int Heat = 0;
    public const int Fast = 1;
    public const int Slow = 2;
    public const int Lignin = 3;
    public const int Water = 4;
    public const int Mineral = 5;
    public const int Microbe = 6;
    public const int Activity = 7;
    public const int Oxygen = 8;
    public const int PerZone = 9;

    // What is fixed for a zone between events.
    public const int Ash = 0;
    public const int Bulk = 1; // m³ per kg dry, loose of load and unsettled
    public const int Settling = 2; // density added in the end, share
    public const int Size = 3; // factor on the rates of slow matter
    public const int Passage = 4; // factor on permeability
    public const int FastNitrogen = 5; // kg N per kg of the pool
    public const int SlowNitrogen = 6;
    public const int LigninNitrogen = 7;
    public const int FastAtStart = 8; // kg
    public const int FixedPerZone = 9;

    private const double OxygenWeight = 300; // K that count as much as a mole fraction of 1
    private const double SecondsPerDay = 86400;
    private const double WaterHeat = 4186; // J/kgK
    private const double IceHeat = 2100;
    private const double Fusion = 334_000; // J/kg

    private HeapGrid grid;
    private readonly int rings;
    private readonly int layers;
    private readonly int zones;
    private readonly int[] drawn;

    public HeapBlock(HeapGrid grid, Weather weather)
    {
        this.grid = grid;
        Weather = weather;
        rings = grid.Rings;
        layers = grid.Layers;
        zones = grid.Zones;
        drawn = [.. Enumerable.Range(0, zones).Select(z => At(z, Oxygen))];
        State = new Vector512<double>[StateCount];
        Fixed = new Vector512<double>[zones * FixedPerZone];
        Parameters = new Vector512<double>[HeapParameters.Count];
        CarbonShare = new Vector512<double>[3];
        TurnedOn = new double[zones];
        Allocate();
    }

    /// <summary>A copy that goes its own way.</summary>
    public HeapBlock Copy()
    {
        var copy = new HeapBlock(grid, Weather)
        {
            Wall = Wall,
            Cover = Cover,
            Tolerance = Tolerance,
            AirOffset = AirOffset,
        };
        State.CopyTo(copy.State, 0);
        Fixed.CopyTo(copy.Fixed, 0);
        Parameters.CopyTo(copy.Parameters, 0);
        CarbonShare.CopyTo(copy.CarbonShare, 0);
        TurnedOn.CopyTo(copy.TurnedOn, 0);
        return copy;
    }

    /// <inheritdoc/>
    public ReadOnlySpan<int> Drawn => drawn;

    /// <inheritdoc/>
    public double Pace => 1 / ParameterOf(HeapParameter.OxygenTime, 0);

    /// <inheritdoc/>
    public int StateCount => (zones * PerZone) + Totals;

    /// <summary>The weather.</summary>
    public Weather Weather { get; }

    /// <summary>Stands the heap on another floor; it has the same rings and layers.</summary>
    /// <param name="floor">The grid there.</param>
    public void StandOn(HeapGrid floor) => grid = floor;

    /// <summary>Shape [lane]: by how much the air of a member lies above the weather, K.</summary>
    public Vector512<double> AirOffset { get; init; }

    /// <summary>The air round one member, °C.</summary>
    /// <param name="time">Days since building.</param>
    /// <param name="lane">The lane.</param>
    public double AirAt(double time, int lane) => Weather.At(time).Air + AirOffset[lane];

    /// <summary>The walls.</summary>
    public Barrier Wall { get; set; }

    /// <summary>The cover.</summary>
    public Barrier Cover { get; set; }

    /// <summary>Shape [zone · 9 + state, then sums].</summary>
    public Vector512<double>[] State { get; }

    /// <summary>Shape [zone · 9 + fixed].</summary>
    public Vector512<double>[] Fixed { get; }

    /// <summary>Shape [parameter].</summary>
    public Vector512<double>[] Parameters { get; }

    /// <summary>Shape [pool]: kg C per kg of each pool.</summary>
    public Vector512<double>[] CarbonShare { get; }

    /// <summary>Shape [zone]: the day on which a zone was last turned or built.</summary>
    public double[] TurnedOn { get; }

    /// <summary>The index of a state of a zone.</summary>
    public static int At(int zone, int state) => (zone * PerZone) + state;

    /// <summary>The index of a sum.</summary>
    public int At(Total total) => (zones * PerZone) + (int)total;

    /// <summary>A state of one member, to read or change.</summary>
    public ref double Of(int zone, int state, int lane) =>
        ref MemoryMarshal.Cast<Vector512<double>, double>(State.AsSpan())[
            (At(zone, state) * Lanes) + lane
        ];

    /// <summary>A sum of one member, to read or change.</summary>
    public ref double Of(Total total, int lane) =>
        ref MemoryMarshal.Cast<Vector512<double>, double>(State.AsSpan())[
            (At(total) * Lanes) + lane
        ];

    /// <summary>What is fixed for a zone of one member, to read or change.</summary>
    public ref double FixedOf(int zone, int which, int lane) =>
        ref MemoryMarshal.Cast<Vector512<double>, double>(Fixed.AsSpan())[
            (((zone * FixedPerZone) + which) * Lanes) + lane
        ];

    /// <summary>A parameter of one member.</summary>
    public ref double ParameterOf(HeapParameter parameter, int lane) =>
        ref MemoryMarshal.Cast<Vector512<double>, double>(Parameters.AsSpan())[
            ((int)parameter * Lanes) + lane
        ];

    /// <inheritdoc/>
    public void Rates(
        double time,
        ReadOnlySpan<Vector512<double>> state,
        Span<Vector512<double>> rate
    )
    {
        rate.Clear();
        var now = Outside.Of(Weather.At(time), Weather.Ground, AirOffset);
        Temperatures(state);
        Volumes(time, state);
        PoreAir();
        AirFlow(now);
        Rotting(state, rate);
        Exchange(now, state, rate);
        Surfaces(now, state, rate);
        OxygenBalance(state, rate);
    }

    /// <inheritdoc/>
    public double ErrorOf(
        ReadOnlySpan<Vector512<double>> state,
        ReadOnlySpan<Vector512<double>> error
    )
    {
        // Control on temperature: the error of the heat over the heat capacity of the last evaluation. Oxygen joins in
        // with a weight: what it is off by for hours tells on the heat.
        var oxygenScale = V(OxygenWeight);
        var worst = Vector512<double>.Zero;
        for (var z = 0; z < zones; z++)
        {
            var e = Vector512.Abs(error[At(z, Heat)]) * inverseCapacity[z];
            worst = Vector512.Max(worst, e);
            worst = Vector512.Max(worst, Vector512.Abs(error[At(z, Oxygen)]) * oxygenScale);
        }

        var largest = 0.0;
        for (var lane = 0; lane < Lanes; lane++)
        {
            var e = worst[lane];
            if (!(e < double.PositiveInfinity))
            {
                return double.PositiveInfinity;
            }

            largest = Math.Max(largest, e);
        }

        return largest / Tolerance;
    }

    /// <summary>Tolerated error of a step, K.</summary>
    public double Tolerance { get; set; } = 0.03;

    private Vector512<double> P(HeapParameter parameter) => Parameters[(int)parameter];

    private static Vector512<double> V(double value) => Vector512.Create(value);
}
