using System.Runtime.Intrinsics;

namespace Heapwright.Core.Simulation;

/// <summary>What is done to a heap, member by member; every change is booked so that the balances still close.</summary>
internal sealed partial class HeapBlock
{
    /// <summary>Heat content over that at 0 °C of matter at a temperature, J.</summary>
    /// <param name="celsius">°C; below 0 the water is ice.</param>
    /// <param name="solidCapacity">J/K of the dry matter.</param>
    /// <param name="water">kg.</param>
    public static double HeatOf(double celsius, double solidCapacity, double water) =>
        celsius >= 0
            ? celsius * (solidCapacity + (water * WaterHeat))
            : (celsius * (solidCapacity + (water * IceHeat))) - (water * Fusion);

    /// <summary>Dry matter of a zone, kg.</summary>
    public double DryOf(int zone, int lane) =>
        Of(zone, Fast, lane)
        + Of(zone, Slow, lane)
        + Of(zone, Lignin, lane)
        + FixedOf(zone, Ash, lane);

    /// <summary>Temperature of a zone, °C.</summary>
    public double CelsiusOf(int zone, int lane)
    {
        var heat = Of(zone, Heat, lane);
        var solid = DryOf(zone, lane) * ParameterOf(HeapParameter.SolidHeat, lane);
        var water = Of(zone, Water, lane);
        return heat >= 0
            ? heat / (solid + (water * WaterHeat))
            : Math.Min(heat + (water * Fusion), 0) / (solid + (water * IceHeat));
    }

    /// <summary>Moves matter between zones.</summary>
    /// <param name="share">Shape [to, from]: the share of the matter of a zone that goes to another; each column adds up to 1.</param>
    /// <param name="lane">The member.</param>
    public void Move(double[,] share, int lane)
    {
        Span<double> extensive = stackalloc double[zones * Moved];
        Span<double> result = stackalloc double[zones * Moved];
        result.Clear();
        for (var z = 0; z < zones; z++)
        {
            Lift(z, lane, extensive.Slice(z * Moved, Moved));
        }

        for (var to = 0; to < zones; to++)
        {
            for (var from = 0; from < zones; from++)
            {
                var s = share[to, from];
                if (s != 0)
                {
                    for (var i = 0; i < Moved; i++)
                    {
                        result[(to * Moved) + i] += s * extensive[(from * Moved) + i];
                    }
                }
            }

            Lay(to, lane, result.Slice(to * Moved, Moved));
        }
    }

    /// <summary>Adds matter to a zone.</summary>
    public void Add(int zone, int lane, HeapBuilder.Portion matter, double bulk, double celsius)
    {
        Span<double> there = stackalloc double[Moved];
        Lift(zone, lane, there);
        var dry = matter.Dry;
        var solid = dry * ParameterOf(HeapParameter.SolidHeat, lane);
        ReadOnlySpan<double> extra =
        [
            HeatOf(celsius, solid, matter.Water),
            matter.Fast,
            matter.Slow,
            matter.Lignin,
            matter.Water,
            matter.Mineral,
            matter.Microbe,
            matter.Ash,
            matter.Fast * matter.FastNitrogen,
            matter.Slow * matter.SlowNitrogen,
            matter.Lignin * matter.LigninNitrogen,
            matter.Fast,
            dry * ParameterOf(HeapParameter.StartActivity, lane),
            dry * Of(zone, Oxygen, lane),
            dry * bulk,
            dry * matter.Settling,
            dry * matter.Size,
            dry * matter.Passage,
        ];
        for (var i = 0; i < Moved; i++)
        {
            there[i] += extra[i];
        }

        Lay(zone, lane, there);
    }

    /// <summary>
    /// Takes a share of everything away. The sums of the past are taken with it, as if the heap had been smaller from the start:
    /// so the balances still close, and what was lost so far stays the same share of what was put in.
    /// </summary>
    /// <param name="left">The share that is left, above 0 and below 1.</param>
    public void Keep(double left)
    {
        for (var z = 0; z < zones; z++)
        {
            for (var s = Heat; s <= Microbe; s++)
            {
                State[At(z, s)] *= left;
            }

            Fixed[(z * FixedPerZone) + Ash] *= left;
            Fixed[(z * FixedPerZone) + FastAtStart] *= left;
        }

        for (var i = zones * PerZone; i < StateCount; i++)
        {
            State[i] *= left;
        }
    }

    /// <summary>Lets a zone lose a share of its heat above the air, part of it as vapour.</summary>
    public void Air(int zone, int lane, double air)
    {
        var celsius = CelsiusOf(zone, lane);
        if (celsius <= air || celsius <= 0)
        {
            return;
        }

        ref var heat = ref Of(zone, Heat, lane);
        ref var water = ref Of(zone, Water, lane);
        var capacity = heat / celsius;
        var lost =
            capacity * ParameterOf(HeapParameter.TurnCooling, lane) * (celsius - Math.Max(air, 0));
        var content = MoistAir.Evaporation + (MoistAir.VapourHeat * celsius);
        var vapour = Math.Min(
            lost * ParameterOf(HeapParameter.TurnVapour, lane) / content,
            water * 0.2
        );
        heat -= lost;
        water -= vapour;
        Of(Total.VapourOut, lane) += vapour;
        Of(Total.LatentOut, lane) += vapour * content;
        Of(Total.AirOut, lane) += lost - (vapour * content);
        Of(zone, Oxygen, lane) = OutsideOxygen;
    }

    /// <summary>Pours water on a zone.</summary>
    public void Pour(int zone, int lane, double litres, double celsius)
    {
        Of(zone, Water, lane) += litres;
        Of(zone, Heat, lane) += litres * WaterHeat * celsius;
        Of(Total.WaterIn, lane) += litres;
        Of(Total.WaterHeatIn, lane) += litres * WaterHeat * celsius;
    }

    // What moves with matter: extensive as it is, intensive times dry mass.
    private const int Moved = 18;

    private void Lift(int z, int lane, Span<double> into)
    {
        var dry = DryOf(z, lane);
        for (var s = Heat; s <= Microbe; s++)
        {
            into[s] = Of(z, s, lane);
        }

        into[7] = FixedOf(z, Ash, lane);
        into[8] = FixedOf(z, FastNitrogen, lane) * into[Fast];
        into[9] = FixedOf(z, SlowNitrogen, lane) * into[Slow];
        into[10] = FixedOf(z, LigninNitrogen, lane) * into[Lignin];
        into[11] = FixedOf(z, FastAtStart, lane);
        into[12] = dry * Of(z, Activity, lane);
        into[13] = dry * Of(z, Oxygen, lane);
        into[14] = dry * FixedOf(z, Bulk, lane);
        into[15] = dry * FixedOf(z, Settling, lane);
        into[16] = dry * FixedOf(z, Size, lane);
        into[17] = dry * FixedOf(z, Passage, lane);
    }

    private void Lay(int z, int lane, ReadOnlySpan<double> from)
    {
        var dry = from[Fast] + from[Slow] + from[Lignin] + from[7];
        for (var s = Heat; s <= Microbe; s++)
        {
            Of(z, s, lane) = from[s];
        }

        FixedOf(z, Ash, lane) = from[7];
        FixedOf(z, FastNitrogen, lane) = from[8] / from[Fast];
        FixedOf(z, SlowNitrogen, lane) = from[9] / from[Slow];
        FixedOf(z, LigninNitrogen, lane) = from[10] / from[Lignin];
        FixedOf(z, FastAtStart, lane) = from[11];
        Of(z, Activity, lane) = from[12] / dry;
        Of(z, Oxygen, lane) = from[13] / dry;
        FixedOf(z, Bulk, lane) = from[14] / dry;
        FixedOf(z, Settling, lane) = from[15] / dry;
        FixedOf(z, Size, lane) = from[16] / dry;
        FixedOf(z, Passage, lane) = from[17] / dry;
    }

    /// <summary>Works out temperatures and volumes of the present state, to be looked at.</summary>
    public void Look(double time)
    {
        Temperatures(State);
        Volumes(time, State);
    }

    /// <summary>Shape [zone]: °C, as of the last look.</summary>
    public ReadOnlySpan<Vector512<double>> Celsius => temperature;

    /// <summary>Shape [zone]: m, as of the last look.</summary>
    public ReadOnlySpan<Vector512<double>> Thickness => thickness;

    /// <summary>Shape [zone]: kg, as of the last look.</summary>
    public ReadOnlySpan<Vector512<double>> Dry => dryMass;
}
