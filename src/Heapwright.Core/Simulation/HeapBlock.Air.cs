using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Heapwright.Numerics.Vectors;
using V8 = System.Runtime.Intrinsics.Vector512<double>;

namespace Heapwright.Core.Simulation;

/// <summary>Temperatures, volumes, pore air, and the flow of air that buoyancy drives.</summary>
internal sealed partial class HeapBlock
{
    private const double Gravity = 9.81;
    private const double AirMass = 1.05; // kg of dry air per m³ in the pores, at about 50 °C and damp
    private const double Viscosity = 1.95e-5; // Pa s
    private const double OxygenDiffusivity = 2.0e-5; // m²/s at 20 °C
    public const double OutsideOxygen = 0.2095;

    // Scratch, shape [zone].
    private V8[] inverseCapacity = [];
    private V8[] temperature = []; // °C
    private V8[] warmth = []; // heat over capacity: as temperature, but below 0 it counts the ice formed
    private V8[] dryMass = [];
    private V8[] thickness = []; // m
    private V8[] inverseVolume = []; // 1/m³
    private V8[] diffusivity = []; // m²/s of pore gas, air space included
    private V8[] resistance = []; // 1/permeability, 1/m²
    private V8[] vapourDensity = []; // kg/m³
    private V8[] inverseKelvin = []; // 1/K
    private V8[] humidity = []; // kg per kg of dry air
    private V8[] poreDensity = []; // kg/m³
    private V8[] conductivity = []; // W/mK

    // Scratch for the flow. Faces between zones: upward [zone] to the layer above, outward [zone] to the ring outside;
    // to the outside: below [ring], above [ring], side [layer]. kg of dry air per second, positive upward and outward.
    private V8[] upFlow = [];
    private V8[] outFlow = [];
    private V8[] baseFlow = [];
    private V8[] topFlow = [];
    private V8[] sideFlow = [];
    private V8[] upConductance = [];
    private V8[] outConductance = [];
    private V8[] pressure = [];
    private V8[] band = []; // [zone, distance to the diagonal]
    private V8[] pivot = [];

    private void Allocate()
    {
        inverseCapacity = new V8[zones];
        temperature = new V8[zones];
        warmth = new V8[zones];
        dryMass = new V8[zones];
        waterRatio = new V8[zones];
        thickness = new V8[zones];
        inverseVolume = new V8[zones];
        diffusivity = new V8[zones];
        resistance = new V8[zones];
        vapourDensity = new V8[zones];
        inverseKelvin = new V8[zones];
        humidity = new V8[zones];
        poreDensity = new V8[zones];
        conductivity = new V8[zones];
        upFlow = new V8[zones];
        outFlow = new V8[zones];
        baseFlow = new V8[rings];
        topFlow = new V8[rings];
        sideFlow = new V8[layers];
        upConductance = new V8[zones];
        outConductance = new V8[zones];
        pressure = new V8[zones];
        band = new V8[zones * (rings + 1)];
        pivot = new V8[zones];
        oxygenIn = new V8[zones];
        oxygenWays = new V8[zones];
        oxygenUse = new V8[zones];
        ammonia = new V8[zones];
    }

    // Temperature from heat: sensible above 0 °C, a plateau while water freezes, ice below.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Temperatures(ReadOnlySpan<V8> state)
    {
        var solid = P(HeapParameter.SolidHeat);
        for (var z = 0; z < zones; z++)
        {
            var i = z * PerZone;
            var dry =
                state[i + Fast]
                + state[i + Slow]
                + state[i + Lignin]
                + Fixed[(z * FixedPerZone) + Ash];
            dryMass[z] = dry;
            var water = state[i + Water];
            waterRatio[z] = water / dry;
            var heat = state[i + Heat];
            var solids = dry * solid;
            var inverse = V8.One / Vector512.FusedMultiplyAdd(water, V(WaterHeat), solids);
            inverseCapacity[z] = inverse;
            var t = heat * inverse;
            warmth[z] = t;
            if (Vector512.LessThanAny(heat, V8.Zero))
            {
                var beyondIce = Vector512.Min(heat + (water * V(Fusion)), V8.Zero);
                t =
                    Vector512.Max(t, V8.Zero)
                    + (beyondIce / Vector512.FusedMultiplyAdd(water, V(IceHeat), solids));
            }

            temperature[z] = t;
        }
    }

    // Volume from dry matter: settled with time, pressed by what lies above; then what is left for air.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Volumes(double time, ReadOnlySpan<V8> state)
    {
        var compaction = P(HeapParameter.Compaction);
        var load = P(HeapParameter.CompactionLoad);
        var settleRate = V8.One / P(HeapParameter.SettleTime);
        var spread = P(HeapParameter.AirSpaceSpread);
        var variance = spread * spread;
        var dryLambda = P(HeapParameter.DryConductivity);
        var wetLambda = P(HeapParameter.WetConductivity);
        var inversePermeability = V8.One / P(HeapParameter.Permeability);
        var cap = P(HeapParameter.PermeabilityCap);
        var floor = P(HeapParameter.PermeabilityFloor);
        var closed = P(HeapParameter.ClosedAirSpace);
        var halfOpen = V(0.5) - closed;
        var scale = V(0.25) / (halfOpen * halfOpen * halfOpen);
        for (var r = 0; r < rings; r++)
        {
            var stress = V8.Zero;
            var weightPerMass = V(Gravity / grid.PlanArea[r]);
            var inversePlan = V(1 / grid.PlanArea[r]);
            for (var k = layers - 1; k >= 0; k--)
            {
                var z = (k * rings) + r;
                var f = z * FixedPerZone;
                var dry = dryMass[z];
                var water = state[At(z, Water)];
                var weight = (dry + water) * weightPerMass;
                var middle = Vector512.FusedMultiplyAdd(weight, V(0.5), stress);
                stress += weight;
                var pressed = V8.One + (compaction * middle / (middle + load));
                var since = Math.Max(0, time - TurnedOn[z]);
                var settled =
                    V8.One
                    + (Fixed[f + Settling] * (V8.One - VectorMath.Exp(V(-since) * settleRate)));
                // Load and settling take from the air between the pieces, not from pieces and water.
                var ash = Fixed[f + Ash];
                var matter =
                    ((dry - ash) * V(1 / 1600.0)) + (ash * V(1 / 2500.0)) + (water * V(1e-3));
                var loose = Vector512.MaxNative((dry * Fixed[f + Bulk]) - matter, V8.Zero);
                var gaps = loose / (pressed * settled);
                var volume = matter + gaps;
                var inverse = V8.One / volume;
                inverseVolume[z] = inverse;
                thickness[z] = volume * inversePlan;
                var wet = water * inverse * V(1e-3);
                var air = gaps * inverse;
                var square = air * air;
                diffusivity[z] =
                    V(OxygenDiffusivity)
                    * (square + variance)
                    * Vector512.FusedMultiplyAdd(temperature[z], V(0.0062), V(0.876));
                // Kozeny and Carman's law in the air space that leads somewhere, 1 at half air space.
                var grain = V8.One - air;
                var open = Vector512.MaxNative(air - closed, V8.Zero);
                var shape = scale * open * open * open / (grain * grain);
                shape = Vector512.Min(shape, cap) + floor;
                resistance[z] = inversePermeability / (shape * Fixed[f + Passage]);
                conductivity[z] = Vector512.FusedMultiplyAdd(wet, wetLambda, dryLambda);
            }
        }
    }

    // The air in the pores: saturated at the zone's temperature, less where matter is nearly dry.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void PoreAir()
    {
        for (var z = 0; z < zones; z++)
        {
            var t = temperature[z];
            var ratio = waterRatio[z];
            var square = ratio * ratio;
            var active = square / (square + V(0.01));
            var vapour = Vector512.Min(
                MoistAir.SaturationPressure(t) * active,
                V(0.8 * MoistAir.Pressure)
            );
            var perKelvin = V8.One / (t + V(273.15));
            inverseKelvin[z] = perKelvin;
            vapourDensity[z] = vapour * perKelvin * V(1 / MoistAir.VapourGas);
            humidity[z] = V(0.622) * vapour / (V(MoistAir.Pressure) - vapour);
            poreDensity[z] =
                perKelvin
                * Vector512.FusedMultiplyAdd(
                    vapour,
                    V(-0.378 / MoistAir.DryGas),
                    V(MoistAir.Pressure / MoistAir.DryGas)
                );
        }
    }

    // Darcy's law on a network of zones, driven by the lightness of warm damp air; what enters a zone leaves it.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void AirFlow(in Outside now)
    {
        var ease = V(AirMass / Viscosity);
        var entry = P(HeapParameter.EntryFactor);
        var outsideDensity = now.Density;
        var width = rings + 1;
        Array.Clear(pressure); // the right side until solved
        Array.Clear(band);
        for (var z = 0; z < zones; z++)
        {
            var (k, r) = Math.DivRem(z, rings);
            var plan = V(grid.PlanArea[r]) * ease;
            var half = thickness[z] * V(0.5);
            var across = half * resistance[z];
            var lift = (outsideDensity - poreDensity[z]) * half * V(Gravity);
            if (k == 0)
            {
                var g = P(HeapParameter.BaseOpenness) * plan / across;
                var push = g * lift;
                baseFlow[r] = g;
                band[z * width] += g;
                pressure[z] += push;
            }

            if (k == layers - 1)
            {
                var g =
                    Vector512.Min(entry * V(Cover.Openness), V8.One)
                    * V(grid.TopArea[r])
                    * ease
                    / across;
                topFlow[r] = g;
                band[z * width] += g;
                pressure[z] -= g * lift;
            }
            else
            {
                var above = z + rings;
                var halfAbove = thickness[above] * V(0.5);
                var g = plan / Vector512.FusedMultiplyAdd(halfAbove, resistance[above], across);
                var push =
                    g * (lift + ((outsideDensity - poreDensity[above]) * halfAbove * V(Gravity)));
                upConductance[z] = g;
                upFlow[z] = push;
                band[z * width] += g;
                band[above * width] += g;
                band[(above * width) + rings] -= g;
                pressure[z] -= push;
                pressure[above] += push;
            }

            if (r < rings - 1)
            {
                var g =
                    V(grid.FacePerimeter[r] * 0.5)
                    * ease
                    * (thickness[z] + thickness[z + 1])
                    / Vector512.FusedMultiplyAdd(
                        V(Inward(r)),
                        resistance[z],
                        V(Outward(r)) * resistance[z + 1]
                    );
                outConductance[z] = g;
                band[z * width] += g;
                band[(z + 1) * width] += g;
                band[((z + 1) * width) + 1] -= g;
            }
            else if (grid.HasSides)
            {
                var g =
                    Vector512.Min(entry * V(Wall.Openness), V8.One)
                    * V(grid.FacePerimeter[r] / Inward(r))
                    * ease
                    * thickness[z]
                    / resistance[z];
                sideFlow[k] = g;
                band[z * width] += g;
            }
        }

        Solve();
        for (var z = 0; z < zones; z++)
        {
            var (k, r) = Math.DivRem(z, rings);
            var half = thickness[z] * V(0.5);
            var lift = (outsideDensity - poreDensity[z]) * half * V(Gravity);
            var p = pressure[z];
            if (k == 0)
            {
                baseFlow[r] *= lift - p;
            }

            if (k == layers - 1)
            {
                topFlow[r] *= p + lift;
            }
            else
            {
                upFlow[z] += upConductance[z] * (p - pressure[z + rings]);
            }

            if (r < rings - 1)
            {
                outFlow[z] = outConductance[z] * (p - pressure[z + 1]);
            }
            else if (grid.HasSides)
            {
                sideFlow[k] *= p;
            }
        }
    }

    // From the centre of a ring outward to its outer face, and from that face to the centre of the next ring, m.
    private double Inward(int ring) =>
        (grid.RingEdges[ring + 1] - grid.Centroid[ring]) * grid.HalfWidth;

    private double Outward(int ring) =>
        (grid.Centroid[ring + 1] - grid.RingEdges[ring + 1]) * grid.HalfWidth;

    // Symmetric band system by LDLᵀ, in place; the right side in pressure, and the answer too.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Solve()
    {
        var width = rings + 1;
        for (var i = 0; i < zones; i++)
        {
            var first = Math.Max(0, i - rings);
            var diagonal = band[i * width];
            var right = pressure[i];
            for (var j = first; j < i; j++)
            {
                var u = band[(i * width) + (i - j)];
                for (var m = Math.Max(first, j - rings); m < j; m++)
                {
                    // Row i holds u = l·d until its turn is over, row j holds l.
                    u -= band[(i * width) + (i - m)] * band[(j * width) + (j - m)];
                }

                band[(i * width) + (i - j)] = u;
            }

            for (var j = first; j < i; j++)
            {
                var u = band[(i * width) + (i - j)];
                var l = u * pivot[j];
                diagonal -= u * l;
                right -= l * pressure[j];
                band[(i * width) + (i - j)] = l;
            }

            pivot[i] = V8.One / diagonal;
            pressure[i] = right;
        }

        for (var i = zones - 1; i >= 0; i--)
        {
            var p = pressure[i] * pivot[i];
            for (var j = i + 1; j <= Math.Min(zones - 1, i + rings); j++)
            {
                p -= band[(j * width) + (j - i)] * pressure[j];
            }

            pressure[i] = p;
        }
    }
}
