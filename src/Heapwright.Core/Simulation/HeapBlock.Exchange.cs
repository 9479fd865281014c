using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using V8 = System.Runtime.Intrinsics.Vector512<double>;

namespace Heapwright.Core.Simulation;

/// <summary>What passes between zones, and between the outer zones and the world; and the oxygen that is left.</summary>
internal sealed partial class HeapBlock
{
    private const double VapourOverOxygen = 1.25; // diffusivity of vapour over that of oxygen
    private const double HeatOverMassTransfer = 1200; // J/m³K of air, Lewis number about 1
    private const double AirOverOxygen = 28.97 / 32; // molar masses

    private V8[] waterRatio = []; // kg per kg dry
    private V8[] oxygenIn = []; // kg air · mole fraction a day
    private V8[] oxygenWays = []; // kg air a day

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Exchange(in Outside now, ReadOnlySpan<V8> state, Span<V8> rate)
    {
        Array.Clear(oxygenIn);
        Array.Clear(oxygenWays);
        var capillary = P(HeapParameter.CapillaryDiffusivity);
        for (var z = 0; z < zones; z++)
        {
            var (k, r) = Math.DivRem(z, rings);
            if (k < layers - 1)
            {
                var above = z + rings;
                var apart = (thickness[z] + thickness[above]) * V(0.5);
                var reach = V(grid.PlanArea[r]) / Vector512.MaxNative(apart, V(grid.LeastDistance));
                Pass(z, above, upFlow[z], reach, capillary, state, rate);
            }

            if (r < rings - 1)
            {
                var reach =
                    V(grid.FacePerimeter[r] * 0.5 / (Inward(r) + Outward(r)))
                    * (thickness[z] + thickness[z + 1]);
                Pass(z, z + 1, outFlow[z], reach, capillary, state, rate);
            }
        }

        Drain(state, rate);
    }

    // Through the face between two zones: air with its vapour, oxygen and ammonia; diffusion; conduction; water.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Pass(
        int a,
        int b,
        V8 flow,
        V8 reach,
        V8 capillary,
        ReadOnlySpan<V8> state,
        Span<V8> rate
    )
    {
        flow *= V(SecondsPerDay);
        var there = Vector512.MaxNative(flow, V8.Zero);
        var back = Vector512.MaxNative(-flow, V8.Zero);
        var gas = (diffusivity[a] + diffusivity[b]) * V(0.5 * SecondsPerDay) * reach; // m³/d

        var mixing = gas * V(AirMass);
        oxygenWays[b] += there + mixing;
        oxygenIn[b] += (there + mixing) * state[At(a, Oxygen)];
        oxygenWays[a] += back + mixing;
        oxygenIn[a] += (back + mixing) * state[At(b, Oxygen)];

        var (ta, tb) = (temperature[a], temperature[b]);
        var wa = there * humidity[a];
        var wb = back * humidity[b];
        var spread = gas * V(VapourOverOxygen) * (vapourDensity[a] - vapourDensity[b]);
        var vapour = wa - wb + spread;
        var latent =
            (wa * VapourContent(ta))
            - (wb * VapourContent(tb))
            + (spread * VapourContent((ta + tb) * V(0.5)));
        var sensible = ((there * ta) - (back * tb)) * V(MoistAir.DryHeat);
        var conducted =
            (conductivity[a] + conductivity[b]) * V(0.5 * SecondsPerDay) * reach * (ta - tb);

        var density = ((dryMass[a] * inverseVolume[a]) + (dryMass[b] * inverseVolume[b])) * V(0.5);
        var seep = capillary * density * reach * (waterRatio[a] - waterRatio[b]);
        // Ice does not move.
        seep = Vector512.ConditionalSelect(
            Vector512.GreaterThan(Vector512.Min(warmth[a], warmth[b]), V8.Zero),
            seep,
            V8.Zero
        );
        var carried =
            V(WaterHeat)
            * Vector512.ConditionalSelect(
                Vector512.GreaterThan(seep, V8.Zero),
                seep * ta,
                seep * tb
            );

        var heat = latent + sensible + conducted + carried;
        rate[At(a, Heat)] -= heat;
        rate[At(b, Heat)] += heat;
        var water = vapour + seep;
        rate[At(a, Water)] -= water;
        rate[At(b, Water)] += water;
        var nitrogen =
            (((there * ammonia[a]) - (back * ammonia[b])) * V(1 / AirMass))
            + (gas * (ammonia[a] - ammonia[b]));
        rate[At(a, Mineral)] -= nitrogen;
        rate[At(b, Mineral)] += nitrogen;
    }

    // Water beyond what matter holds against gravity goes down, and out at the base, with its heat and nitrogen.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Drain(ReadOnlySpan<V8> state, Span<V8> rate)
    {
        var capacity = P(HeapParameter.HoldingCapacity);
        var pace = V8.One / P(HeapParameter.DrainTime);
        for (var z = 0; z < zones; z++)
        {
            var over = waterRatio[z] - capacity;
            if (!Vector512.GreaterThanAny(over, V8.Zero))
            {
                continue;
            }

            var flow = Vector512.MaxNative(over, V8.Zero) * dryMass[z] * pace;
            flow = Vector512.ConditionalSelect(
                Vector512.GreaterThan(warmth[z], V8.Zero),
                flow,
                V8.Zero
            );
            var heat = flow * V(WaterHeat) * temperature[z];
            var nitrogen = flow * state[At(z, Mineral)] / state[At(z, Water)];
            rate[At(z, Water)] -= flow;
            rate[At(z, Heat)] -= heat;
            rate[At(z, Mineral)] -= nitrogen;
            if (z >= rings)
            {
                rate[At(z - rings, Water)] += flow;
                rate[At(z - rings, Heat)] += heat;
                rate[At(z - rings, Mineral)] += nitrogen;
            }
            else
            {
                rate[At(Total.DrainedOut)] += flow;
                rate[At(Total.NitrogenDrained)] += nitrogen;
                rate[At(Total.WaterHeatIn)] -= heat;
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Surfaces(in Outside now, ReadOnlySpan<V8> state, Span<V8> rate)
    {
        var transfer = P(HeapParameter.SurfaceFactor) * V(5.7 + (3.8 * now.Wind));
        var walls = P(HeapParameter.WallFactor);
        for (var r = 0; r < rings; r++)
        {
            Surface(
                ((layers - 1) * rings) + r,
                topFlow[r],
                V(grid.TopArea[r]),
                thickness[((layers - 1) * rings) + r] * V(0.5),
                Cover,
                walls,
                transfer,
                now,
                now.Sun,
                state,
                rate
            );
            Ground(r, now, state, rate);
            var rain = now.Rain * (1 - Cover.Shed) * grid.PlanArea[r];
            if (rain > 0)
            {
                var top = ((layers - 1) * rings) + r;
                var heat = V(rain * WaterHeat) * Vector512.Max(now.Air, V8.Zero);
                rate[At(top, Water)] += V(rain);
                rate[At(top, Heat)] += heat;
                rate[At(Total.WaterIn)] += V(rain);
                rate[At(Total.WaterHeatIn)] += heat;
            }
        }

        if (!grid.HasSides)
        {
            return;
        }

        var outer = rings - 1;
        for (var k = 0; k < layers; k++)
        {
            var z = (k * rings) + outer;
            Surface(
                z,
                sideFlow[k],
                V(grid.FacePerimeter[outer]) * thickness[z],
                V(Inward(outer)),
                Wall,
                walls,
                transfer,
                now,
                0,
                state,
                rate
            );
        }
    }

    // An outer surface: heat through the barrier, vapour and oxygen by diffusion, and the flow of air either way.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Surface(
        int z,
        V8 flow,
        V8 area,
        V8 half,
        Barrier barrier,
        V8 walls,
        V8 transfer,
        in Outside now,
        double sun,
        ReadOnlySpan<V8> state,
        Span<V8> rate
    )
    {
        var t = temperature[z];
        var inverseTransfer = V8.One / transfer;
        var outside = now.Air + (V(0.7 * sun) * inverseTransfer);
        var insulated = (walls * V(barrier.Resistance)) + inverseTransfer;
        var conducted =
            area
            * V(SecondsPerDay)
            * conductivity[z]
            * (t - outside)
            / Vector512.FusedMultiplyAdd(insulated, conductivity[z], half);

        var still = V(HeatOverMassTransfer) * inverseTransfer; // s/m
        var gas = diffusivity[z];
        var vapourWay =
            gas
            * V(VapourOverOxygen * SecondsPerDay)
            * area
            / Vector512.FusedMultiplyAdd(
                still * V(1 / barrier.Evaporation),
                gas * V(VapourOverOxygen),
                half
            );
        var openness = Vector512.MinNative(
            P(HeapParameter.EntryFactor) * V(barrier.Openness),
            V8.One
        );
        var gasWay =
            gas * V(SecondsPerDay) * area / Vector512.FusedMultiplyAdd(still / openness, gas, half);
        var spread = vapourWay * (vapourDensity[z] - now.VapourDensity);
        Leave(z, flow, spread, gasWay, conducted, now, state, rate);
    }

    // The ground: heat, and air through the coarse base.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Ground(int r, in Outside now, ReadOnlySpan<V8> state, Span<V8> rate)
    {
        var half = thickness[r] * V(0.5);
        var conducted =
            V(grid.PlanArea[r] * SecondsPerDay)
            * conductivity[r]
            * (temperature[r] - V(now.Ground))
            / Vector512.FusedMultiplyAdd(P(HeapParameter.GroundResistance), conductivity[r], half);
        Leave(r, -baseFlow[r], V8.Zero, V8.Zero, conducted, now, state, rate);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Leave(
        int z,
        V8 flow,
        V8 spread,
        V8 gasWay,
        V8 conducted,
        in Outside now,
        ReadOnlySpan<V8> state,
        Span<V8> rate
    )
    {
        flow *= V(SecondsPerDay);
        var leaving = Vector512.MaxNative(flow, V8.Zero);
        var entering = Vector512.MaxNative(-flow, V8.Zero);
        var t = temperature[z];
        var wOut = leaving * humidity[z];
        var wIn = entering * now.Humidity;
        var vapour = wOut - wIn + spread;
        var latent =
            ((wOut + Vector512.MaxNative(spread, V8.Zero)) * VapourContent(t))
            - (
                (wIn + Vector512.MaxNative(-spread, V8.Zero))
                * (V(MoistAir.Evaporation) + (V(MoistAir.VapourHeat) * now.Air))
            );
        var sensible = ((leaving * t) - (entering * now.Air)) * V(MoistAir.DryHeat);
        rate[At(z, Heat)] -= latent + sensible + conducted;
        rate[At(z, Water)] -= vapour;
        var ways = entering + (gasWay * V(AirMass));
        oxygenWays[z] += ways;
        oxygenIn[z] += ways * V(OutsideOxygen);
        var nitrogen = ((leaving * V(1 / AirMass)) + gasWay) * ammonia[z];
        rate[At(z, Mineral)] -= nitrogen;
        rate[At(Total.VapourOut)] += vapour;
        rate[At(Total.LatentOut)] += latent;
        rate[At(Total.AirOut)] += sensible;
        rate[At(Total.SurfaceOut)] += conducted;
        rate[At(Total.AmmoniaOut)] += nitrogen;
    }

    // Oxygen follows the balance of what comes and what is used within minutes: the positive root of a quadratic.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void OxygenBalance(ReadOnlySpan<V8> state, Span<V8> rate)
    {
        var half = P(HeapParameter.OxygenHalf);
        var pace = V8.One / P(HeapParameter.OxygenTime);
        for (var z = 0; z < zones; z++)
        {
            var ways = oxygenWays[z];
            var supply = oxygenIn[z];
            var b = Vector512.FusedMultiplyAdd(
                ways,
                half,
                (oxygenUse[z] * V(AirOverOxygen)) - supply
            );
            var product = half * supply;
            var root = Vector512.Sqrt(Vector512.FusedMultiplyAdd(b, b, V(4.0) * ways * product));
            // Either form of the root, whichever does not subtract equals.
            var positive = Vector512.GreaterThan(b, V8.Zero);
            var upper = Vector512.ConditionalSelect(positive, product + product, root - b);
            var lower = Vector512.ConditionalSelect(positive, root + b, ways + ways);
            rate[At(z, Oxygen)] = ((upper / lower) - state[At(z, Oxygen)]) * pace;
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static V8 VapourContent(V8 t) =>
        Vector512.FusedMultiplyAdd(t, V(MoistAir.VapourHeat), V(MoistAir.Evaporation));
}
