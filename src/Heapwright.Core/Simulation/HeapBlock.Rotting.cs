using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Heapwright.Numerics.Vectors;
using V8 = System.Runtime.Intrinsics.Vector512<double>;

namespace Heapwright.Core.Simulation;

/// <summary>Rotting: what holds it back, what it makes, and where the nitrogen goes.</summary>
internal sealed partial class HeapBlock
{
    private const double Log2Of10 = 3.321928094887362;

    private V8[] oxygenUse = []; // kg a day if oxygen were plenty
    private V8[] ammonia = []; // kg N per m³ of pore gas

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Rotting(ReadOnlySpan<V8> state, Span<V8> rate)
    {
        var pace = V(1.4426950408889634) / P(HeapParameter.AcidityPace);
        var made = V8.Zero;
        var vanished = V8.Zero;
        var carbonOut = V8.Zero;
        var waterMade = V8.Zero;
        for (var z = 0; z < zones; z++)
        {
            var i = z * PerZone;
            var f = z * FixedPerZone;
            var fast = state[i + Fast];
            var slow = state[i + Slow];
            var lignin = state[i + Lignin];
            var water = state[i + Water];
            var mineral = state[i + Mineral];
            var microbe = state[i + Microbe];
            var activity = state[i + Activity];
            var oxygen = Vector512.MaxNative(state[i + Oxygen], V8.Zero);

            var warm = TemperatureFactor(warmth[z]);
            var moisture = water / (water + dryMass[z]);
            var damp = VectorMath.Logistic(
                P(HeapParameter.DrySteepness) * (moisture - P(HeapParameter.DryMidpoint))
            );
            var aired = oxygen / (oxygen + P(HeapParameter.OxygenHalf));
            var pull = warm * damp * activity;

            // Rates were air and nitrogen plenty, kg a day.
            var sized = pull * Fixed[f + Size];
            var fast1 = P(HeapParameter.FastRate) * pull * fast;
            var slow1 = P(HeapParameter.SlowRate) * sized * slow;
            var lignin1 = P(HeapParameter.LigninRate) * sized * lignin;
            var carbon1 =
                (CarbonShare[0] * fast1) + (CarbonShare[1] * slow1) + (CarbonShare[2] * lignin1);
            var freed1 =
                (Fixed[f + FastNitrogen] * fast1)
                + (Fixed[f + SlowNitrogen] * slow1)
                + (Fixed[f + LigninNitrogen] * lignin1);

            // What microbes need beyond what the rotting matter itself frees must come from mineral nitrogen and from
            // dead microbes; that, and not the ratio of the whole, holds rotting back.
            var need = P(HeapParameter.Yield) * carbon1 / P(HeapParameter.MicrobeRatio);
            var deficit = Vector512.MaxNative(need - freed1, V8.Zero);
            var excess = Vector512.MaxNative(freed1 - need, V8.Zero);
            var recycled = P(HeapParameter.MicrobeDecay) * warm * microbe;
            var supply = recycled + (P(HeapParameter.MineralUptake) * mineral);
            var met = VectorMath.SmoothMinOne(
                Vector512.MinNative(supply / (deficit + V(1e-12)), V(1e6))
            );
            var least = P(HeapParameter.NitrogenFloor);
            var fed = least + ((V8.One - least) * met);
            var taken = Vector512.MinNative(fed * deficit, supply);

            var share = fed * aired;
            var all1 = fast1 + slow1 + lignin1;
            var rotted = all1 * share;
            oxygenUse[z] = P(HeapParameter.OxygenDemand) * all1 * fed;
            rate[i + Fast] -= fast1 * share;
            rate[i + Slow] -= slow1 * share;
            rate[i + Lignin] -= lignin1 * share;
            rate[i + Mineral] += aired * ((fed * excess) + recycled - taken);
            rate[i + Microbe] += aired * ((fed * (freed1 - excess)) + taken - recycled);

            var newWater = P(HeapParameter.MetabolicWater) * rotted;
            rate[i + Water] += newWater;
            waterMade += newWater;
            carbonOut += carbon1 * share;

            // Matter that vanishes takes its heat along, water that appears brings its own: temperature does not jump.
            var heat = P(HeapParameter.OxygenHeat) * P(HeapParameter.OxygenDemand) * rotted;
            var gone =
                ((P(HeapParameter.SolidHeat) * rotted) - (V(WaterHeat) * newWater)) * warmth[z];
            rate[i + Heat] += heat - gone;
            made += heat;
            vanished += gone;

            var kill =
                P(HeapParameter.HeatKill) * VectorMath.Exp((temperature[z] - V(70.0)) * V(0.25));
            rate[i + Activity] +=
                (P(HeapParameter.ActivityGrowth) * pull * aired * (V8.One - activity))
                + (P(HeapParameter.ActivitySeed) * warm * (V8.One - activity))
                - (kill * activity);

            // Ammonia in the pore gas over dissolved, sorbed ammonium; acid at first and without air.
            var used = V8.One - (fast / Fixed[f + FastAtStart]);
            var acidity =
                P(HeapParameter.AcidityStart)
                + (P(HeapParameter.AcidityRise) * aired * (V8.One - VectorMath.Exp2(-used * pace)));
            var perKelvin = inverseKelvin[z];
            var free =
                V8.One
                + VectorMath.Exp2(
                    (Vector512.FusedMultiplyAdd(perKelvin, V(2729.92), V(0.09018)) - acidity)
                        * V(Log2Of10)
                );
            var partition =
                V(0.2138)
                * perKelvin
                * VectorMath.Exp2(
                    Vector512.FusedMultiplyAdd(perKelvin, V(-1825 * Log2Of10), V(6.123 * Log2Of10))
                );
            ammonia[z] =
                partition
                * mineral
                * V(1000.0)
                / (free * P(HeapParameter.AmmoniaHeld) * (water + V(1e-9)));
        }

        rate[At(Total.HeatMade)] = made;
        rate[At(Total.MatterHeatOut)] = vanished;
        rate[At(Total.CarbonOut)] = carbonOut;
        rate[At(Total.WaterMade)] = waterMade;
    }

    // Two guilds, each with its lowest, best and highest temperature; the cool one starts a cold heap.
    private V8 TemperatureFactor(V8 t)
    {
        var heat = Cardinal(
            t,
            P(HeapParameter.HeatLowest),
            P(HeapParameter.HeatBest),
            P(HeapParameter.HeatHighest)
        );
        var cool = Cardinal(
            t,
            P(HeapParameter.CoolLowest),
            P(HeapParameter.CoolBest),
            P(HeapParameter.CoolHighest)
        );
        return heat + (P(HeapParameter.CoolWeight) * cool * (V8.One - heat));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static V8 Cardinal(V8 t, V8 lowest, V8 best, V8 highest)
    {
        var above = t - lowest;
        var span = best - lowest;
        var up = (t - highest) * above * above;
        var down = span * ((span * (t - best)) - ((best - highest) * (best + lowest - (t + t))));
        var inside = Vector512.GreaterThan(t, lowest) & Vector512.LessThan(t, highest);
        return Vector512.ConditionalSelect(inside, up / down, V8.Zero);
    }
}
