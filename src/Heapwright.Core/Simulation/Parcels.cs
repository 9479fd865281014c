using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Heapwright.Numerics.Sampling;
using Heapwright.Numerics.Vectors;

namespace Heapwright.Core.Simulation;

/// <summary>
/// Small equal shares of the matter of a heap, each followed through zones and turns: how long it was hot without a
/// break, and its time-temperature dose. Eight members at once; all share the places and the throws of the fork.
/// </summary>
internal sealed class Parcels
{
    /// <summary>The number of parcels.</summary>
    public const int Count = 1024;

    /// <summary>°C that must be held.</summary>
    public const double Held = 55;

    /// <summary>Days for which it must be held without a break.</summary>
    public const double HeldDays = 3;

    private const double Log2Of10 = 3.321928094887362;
    private readonly HeapGrid grid;
    private readonly Surfaces surfaces;
    private SplitMix64 stream; // a struct that moves on: not readonly
    private readonly Place[] places = new Place[Count];
    private readonly Vector512<double>[] run = new Vector512<double>[Count];
    private readonly Vector512<double>[] held = new Vector512<double>[Count];
    private readonly Vector512<double>[] before = new Vector512<double>[Count];
    private readonly Vector512<double>[] dose = new Vector512<double>[Count];
    private bool started;

    public Parcels(HeapGrid grid, Surfaces surfaces, ulong seed)
    {
        this.grid = grid;
        this.surfaces = surfaces;
        stream = new SplitMix64(SplitMix64.SeedFor(seed, "parcels"));
        var total = grid.Volume;
        // Spread evenly: the share of each zone to within one parcel, places inside by a low-discrepancy rule.
        var (zone, sum) = (0, grid.ZoneVolume(0) / total);
        for (var i = 0; i < Count; i++)
        {
            var at = (i + 0.5) / Count;
            while (at > sum && zone < grid.Zones - 1)
            {
                sum += grid.ZoneVolume(++zone) / total;
            }

            places[i] = Inside(
                zone,
                Fraction(i * 0.7548776662466927),
                Fraction(i * 0.5698402909980532)
            );
        }
    }

    // A copy that goes its own way.
    private Parcels(Parcels from)
    {
        grid = from.grid;
        surfaces = from.surfaces;
        stream = from.stream;
        started = from.started;
        from.places.CopyTo(places, 0);
        from.run.CopyTo(run, 0);
        from.held.CopyTo(held, 0);
        from.before.CopyTo(before, 0);
        from.dose.CopyTo(dose, 0);
    }

    /// <summary>A copy that goes its own way.</summary>
    public Parcels Copy() => new(this);

    /// <summary>How surfaces stand between the outer zones and the world.</summary>
    /// <param name="Side">Share of a zone's excess over the air that is left at its outer side, 0 to 1.</param>
    /// <param name="Top">The same on top.</param>
    /// <param name="Base">The same at the ground.</param>
    public readonly record struct Surfaces(double Side, double Top, double Base);

    private readonly record struct Place(
        int Zone,
        double Rho,
        double Zeta,
        int A,
        int B,
        int C,
        int D,
        double WA,
        double WB,
        double WC,
        double WD,
        double Air,
        double Ground
    );

    /// <summary>Takes note of the temperatures at the next time.</summary>
    /// <param name="celsius">Shape [zone].</param>
    /// <param name="air">Shape [lane]: °C.</param>
    /// <param name="ground">°C.</param>
    /// <param name="days">Since the last note.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Note(
        ReadOnlySpan<Vector512<double>> celsius,
        Vector512<double> air,
        double ground,
        double days
    )
    {
        var limit = Vector512.Create(Held);
        var enough = Vector512.Create(HeldDays - 1e-9);
        var step = Vector512.Create(days);
        for (var i = 0; i < Count; i++)
        {
            ref readonly var p = ref places[i];
            var t =
                (celsius[p.A] * Vector512.Create(p.WA))
                + (celsius[p.B] * Vector512.Create(p.WB))
                + (celsius[p.C] * Vector512.Create(p.WC))
                + (celsius[p.D] * Vector512.Create(p.WD))
                + ((Vector512.Create(p.Air) * air) + Vector512.Create(p.Ground * ground));
            if (started)
            {
                // Hot between two looks only if hot at both.
                var lower = Vector512.Min(t, before[i]);
                run[i] = Vector512.ConditionalSelect(
                    Vector512.GreaterThanOrEqual(lower, limit),
                    run[i] + step,
                    Vector512<double>.Zero
                );
                held[i] = Vector512.ConditionalSelect(
                    Vector512.GreaterThanOrEqual(run[i], enough),
                    Vector512<double>.One,
                    held[i]
                );
                if (Vector512.GreaterThanOrEqualAny(lower, Vector512.Create(50.0)))
                {
                    // D = 131,700,000 / 10^(0.14 t) days, 40 CFR 503.32, for 7 % solids or more; from 50 °C.
                    var rate =
                        VectorMath.Exp2(lower * Vector512.Create(0.14 * Log2Of10))
                        * Vector512.Create(1 / 131_700_000.0);
                    dose[i] += Vector512.ConditionalSelect(
                        Vector512.GreaterThanOrEqual(lower, Vector512.Create(50.0)),
                        rate * step,
                        Vector512<double>.Zero
                    );
                }
            }

            before[i] = t;
        }

        started = true;
    }

    /// <summary>Moves parcels with the matter; one that stays in its zone keeps its place.</summary>
    /// <param name="share">Shape [to, from]; each column adds up to 1.</param>
    public void Move(double[,] share)
    {
        for (var i = 0; i < Count; i++)
        {
            var u = stream.NextUnit();
            var from = places[i].Zone;
            var to = 0;
            while (to < grid.Zones - 1 && (u -= share[to, from]) >= 0)
            {
                to++;
            }

            if (to != from)
            {
                places[i] = Inside(to, stream.NextUnit(), stream.NextUnit());
            }
        }
    }

    /// <summary>Replaces a share of the parcels of a zone by fresh matter.</summary>
    /// <param name="zone">The zone.</param>
    /// <param name="fresh">The share of its matter that is fresh.</param>
    public void Freshen(int zone, double fresh)
    {
        for (var i = 0; i < Count; i++)
        {
            if (places[i].Zone == zone && stream.NextUnit() < fresh)
            {
                run[i] = held[i] = dose[i] = Vector512<double>.Zero;
            }
        }
    }

    /// <summary>The share of the parcels that was held hot long enough, in each lane, percent.</summary>
    public Vector512<double> HeldPercent()
    {
        var sum = Vector512<double>.Zero;
        foreach (var h in held)
        {
            sum += h;
        }

        return sum * Vector512.Create(100.0 / Count);
    }

    /// <summary>The share of the parcels with a time-temperature dose of 1 or more, in each lane, percent.</summary>
    public Vector512<double> DosedPercent()
    {
        var sum = Vector512<double>.Zero;
        foreach (var d in dose)
        {
            sum += Vector512.ConditionalSelect(
                Vector512.GreaterThanOrEqual(d, Vector512<double>.One),
                Vector512<double>.One,
                Vector512<double>.Zero
            );
        }

        return sum * Vector512.Create(100.0 / Count);
    }

    // A place inside a zone and the weights by which the temperature there follows from zones, air and ground.
    private Place Inside(int zone, double u, double v)
    {
        var (layer, ring) = Math.DivRem(zone, grid.Rings);
        var (a, b) = (grid.RingEdges[ring], grid.RingEdges[ring + 1]);
        var rho =
            grid.Shape == Bins.BinShape.Windrow
                ? a + ((b - a) * u)
                : Math.Sqrt((a * a) + (((b * b) - (a * a)) * u));
        var zeta =
            grid.LayerEdges[layer] + ((grid.LayerEdges[layer + 1] - grid.LayerEdges[layer]) * v);

        var (r0, r1, toR1, side) = Between(rho, grid.Centroid, grid.HasSides ? surfaces.Side : 1);
        var middles = new double[grid.Layers];
        for (var k = 0; k < middles.Length; k++)
        {
            middles[k] = (grid.LayerEdges[k] + grid.LayerEdges[k + 1]) / 2;
        }

        var (k0, k1, toK1, top) = Between(zeta, middles, surfaces.Top);
        var bottom = zeta < middles[0] ? (1 - (zeta / middles[0])) * (1 - surfaces.Base) : 0;
        var inside = 1 - top - bottom;
        var lower = (1 - toK1) * inside;
        var upper = toK1 * inside;
        var inner = (1 - toR1) * (1 - side);
        var outer = toR1 * (1 - side);
        return new Place(
            zone,
            rho,
            zeta,
            grid.Zone(r0, k0),
            grid.Zone(r1, k0),
            grid.Zone(r0, k1),
            grid.Zone(r1, k1),
            lower * inner,
            lower * outer,
            upper * inner,
            upper * outer,
            top + (side * inside),
            bottom
        );
    }

    // The two nodes next to a place, the weight of the second, and what is taken off towards the surface at 1.
    private static (int First, int Second, double ToSecond, double Off) Between(
        double at,
        double[] nodes,
        double left
    )
    {
        if (at <= nodes[0])
        {
            return (0, 0, 0, 0);
        }

        for (var i = 1; i < nodes.Length; i++)
        {
            if (at <= nodes[i])
            {
                return (i - 1, i, (at - nodes[i - 1]) / (nodes[i] - nodes[i - 1]), 0);
            }
        }

        var last = nodes.Length - 1;
        return (last, last, 0, (at - nodes[last]) / (1 - nodes[last]) * (1 - left));
    }

    private static double Fraction(double x) => x - Math.Floor(x);
}
