using Heapwright.Core.Simulation;
using Barrier = Heapwright.Core.Simulation.Barrier;

namespace Heapwright.Core.Tests.Simulation;

/// <summary>
/// The equations of a heap for one member in plain double and with the functions of Math: the oracle for the vector
/// code. The air flow is solved as a full system, the oxygen by halving an interval.
/// </summary>
internal sealed class ReferenceHeap(HeapGrid grid, Barrier wall, Barrier cover)
{
    private const double Day = 86400;
    private const double WaterHeat = 4186; // J/kgK
    private const double AirMass = 1.05; // kg dry air per m³ of pores
    private const int Nowhere = -1; // the outside

    private readonly int zones = grid.Zones;
    private readonly List<Face> faces = [];

    /// <summary>Shape [parameter].</summary>
    public double[] Parameters { get; } = new double[HeapParameters.Count];

    /// <summary>Shape [zone · 9 + fixed].</summary>
    public double[] Fixed { get; } = new double[grid.Zones * HeapBlock.FixedPerZone];

    /// <summary>Shape [pool].</summary>
    public double[] CarbonShare { get; } = new double[3];

    /// <summary>Shape [zone]: days.</summary>
    public double[] TurnedOn { get; } = new double[grid.Zones];

    /// <summary>The saturation pressure, Pa, of a temperature in °C; the formula itself unless told.</summary>
    public Func<double, double> SaturationPressure { get; set; } = MoistAir.SaturationPressure;

    /// <summary>Shape [zone · 9 + state, then sums]: the rates of change per day.</summary>
    public double[] Rate { get; private set; } = [];

    /// <summary>
    /// Shape as the rates: the sum of the sizes of what was added to and taken from each rate, that of differences
    /// being the sum of their terms: what the error of a rate must be compared with.
    /// </summary>
    public double[] Gross { get; private set; } = [];

    private double P(HeapParameter parameter) => Parameters[(int)parameter];

    /// <summary>Works out the rates.</summary>
    public void Evaluate(double time, double[] state, WeatherMoment weather, double ground)
    {
        Rate = new double[(zones * HeapBlock.PerZone) + HeapBlock.Totals];
        Gross = new double[Rate.Length];
        var z = new Zone[zones];
        for (var i = 0; i < zones; i++)
        {
            z[i] = new Zone(state.AsSpan(i * HeapBlock.PerZone, HeapBlock.PerZone).ToArray());
            Warm(i, z[i]);
        }

        Press(time, z);
        foreach (var zone in z)
        {
            Moisten(zone);
        }

        var air = Air(weather);
        Connect(z, air);
        Blow();
        for (var i = 0; i < zones; i++)
        {
            Rot(i, z[i]);
        }

        foreach (var face in faces)
        {
            if (face.From != Nowhere && face.To != Nowhere)
            {
                Between(face, z);
            }
            else
            {
                Outward(face, z, air, weather, ground);
            }
        }

        for (var i = 0; i < zones; i++)
        {
            Drain(i, z);
        }

        Rain(weather);
        for (var i = 0; i < zones; i++)
        {
            Breathe(i, z[i]);
        }
    }

    private double F(int zone, int which) => Fixed[(zone * HeapBlock.FixedPerZone) + which];

    // Heat content is counted from liquid water and dry matter at 0 °C.
    private void Warm(int i, Zone z)
    {
        z.Dry = z[HeapBlock.Fast] + z[HeapBlock.Slow] + z[HeapBlock.Lignin] + F(i, HeapBlock.Ash);
        z.WaterRatio = z[HeapBlock.Water] / z.Dry;
        var solids = z.Dry * P(HeapParameter.SolidHeat);
        var heat = z[HeapBlock.Heat];
        z.Warmth = heat / (solids + (z[HeapBlock.Water] * WaterHeat));
        var allIce = -334_000 * z[HeapBlock.Water];
        z.Celsius =
            heat >= 0 ? z.Warmth
            : heat >= allIce ? 0
            : (heat - allIce) / (solids + (z[HeapBlock.Water] * 2100));
    }

    // From the top of each ring down: what lies above presses.
    private void Press(double time, Zone[] z)
    {
        for (var r = 0; r < grid.Rings; r++)
        {
            var above = 0.0; // Pa
            for (var k = grid.Layers - 1; k >= 0; k--)
            {
                var i = grid.Zone(r, k);
                var one = z[i];
                var own = 9.81 * (one.Dry + one[HeapBlock.Water]) / grid.PlanArea[r];
                var load = above + (own / 2);
                above += own;
                var age = Math.Max(time - TurnedOn[i], 0);
                var density =
                    (
                        1
                        + (
                            P(HeapParameter.Compaction)
                            * load
                            / (load + P(HeapParameter.CompactionLoad))
                        )
                    )
                    * (
                        1
                        + (
                            F(i, HeapBlock.Settling)
                            * (1 - Math.Exp(-age / P(HeapParameter.SettleTime)))
                        )
                    );
                // Only the gaps between the pieces give way; pieces and water keep their volume.
                var ash = F(i, HeapBlock.Ash);
                var matter =
                    ((one.Dry - ash) / 1600) + (ash / 2500) + (one[HeapBlock.Water] / 1000);
                var gaps = Math.Max((one.Dry * F(i, HeapBlock.Bulk)) - matter, 0) / density;
                one.Volume = matter + gaps;
                one.Thickness = one.Volume / grid.PlanArea[r];
                var wet = one[HeapBlock.Water] / 1000 / one.Volume;
                var e = gaps / one.Volume;
                var s2 = Math.Pow(P(HeapParameter.AirSpaceSpread), 2);
                // The mean of its square over a spread of air space.
                one.Diffusivity = 2e-5 * ((e * e) + s2) * (0.876 + (0.0062 * one.Celsius));
                // Kozeny and Carman's cube over square, as a multiple of that at half air space.
                var closed = P(HeapParameter.ClosedAirSpace);
                var through = Math.Max(e - closed, 0) / (0.5 - closed);
                var multiple =
                    Math.Min(
                        Math.Pow(through, 3) * Math.Pow(0.5 / (1 - e), 2),
                        P(HeapParameter.PermeabilityCap)
                    ) + P(HeapParameter.PermeabilityFloor);
                one.Permeability =
                    P(HeapParameter.Permeability) * multiple * F(i, HeapBlock.Passage);
                one.Conductivity =
                    P(HeapParameter.DryConductivity) + (P(HeapParameter.WetConductivity) * wet);
            }
        }
    }

    private void Moisten(Zone z)
    {
        var activity = Math.Pow(z.WaterRatio, 2) / (Math.Pow(z.WaterRatio, 2) + 0.01);
        var vapour = Math.Min(SaturationPressure(z.Celsius) * activity, 0.8 * 101_325);
        var kelvin = z.Celsius + 273.15;
        z.VapourDensity = vapour / (461.5 * kelvin);
        z.Humidity = 0.622 * vapour / (101_325 - vapour);
        z.AirDensity = (101_325 - (0.378 * vapour)) / (287.05 * kelvin);
    }

    private static OutsideAir Air(WeatherMoment w)
    {
        var vapour = w.Humidity * 610.94 * Math.Exp(17.625 * w.Air / (w.Air + 243.04));
        var kelvin = w.Air + 273.15;
        return new OutsideAir(
            (101_325 - (0.378 * vapour)) / (287.05 * kelvin),
            vapour / (461.5 * kelvin),
            0.622 * vapour / (101_325 - vapour)
        );
    }

    // The ways for air, each with its conductance in kg/s per Pa and what drives it in Pa.
    private void Connect(Zone[] z, OutsideAir air)
    {
        faces.Clear();
        const double Ease = AirMass / 1.95e-5;
        double Lift(Zone one) => (air.Density - one.AirDensity) * 9.81 * one.Thickness / 2;
        static double Hold(Zone one) => one.Thickness / 2 / one.Permeability;
        double Entry(double openness) => Math.Min(P(HeapParameter.EntryFactor) * openness, 1);
        for (var k = 0; k < grid.Layers; k++)
        {
            for (var r = 0; r < grid.Rings; r++)
            {
                var i = grid.Zone(r, k);
                var one = z[i];
                var area = grid.PlanArea[r];
                if (k == 0)
                {
                    var ease = P(HeapParameter.BaseOpenness) * area * Ease / Hold(one);
                    faces.Add(new Face(Nowhere, i, Way.Base, ease, Lift(one), area, 0));
                }

                if (k == grid.Layers - 1)
                {
                    var ease = Entry(cover.Openness) * grid.TopArea[r] * Ease / Hold(one);
                    faces.Add(
                        new Face(
                            i,
                            Nowhere,
                            Way.Top,
                            ease,
                            Lift(one),
                            grid.TopArea[r],
                            one.Thickness / 2
                        )
                    );
                }
                else
                {
                    var two = z[grid.Zone(r, k + 1)];
                    faces.Add(
                        new Face(
                            i,
                            grid.Zone(r, k + 1),
                            Way.Within,
                            area * Ease / (Hold(one) + Hold(two)),
                            Lift(one) + Lift(two),
                            area,
                            Math.Max((one.Thickness + two.Thickness) / 2, grid.LeastDistance)
                        )
                    );
                }

                var edge = grid.RingEdges[r + 1];
                var inner = (edge - grid.Centroid[r]) * grid.HalfWidth;
                if (r < grid.Rings - 1)
                {
                    var two = z[i + 1];
                    var outer = (grid.Centroid[r + 1] - edge) * grid.HalfWidth;
                    var face = grid.FacePerimeter[r] * (one.Thickness + two.Thickness) / 2;
                    faces.Add(
                        new Face(
                            i,
                            i + 1,
                            Way.Within,
                            face * Ease / ((inner / one.Permeability) + (outer / two.Permeability)),
                            0,
                            face,
                            inner + outer
                        )
                    );
                }
                else if (grid.HasSides)
                {
                    var face = grid.FacePerimeter[r] * one.Thickness;
                    var ease = Entry(wall.Openness) * face * Ease * one.Permeability / inner;
                    faces.Add(new Face(i, Nowhere, Way.Side, ease, 0, face, inner));
                }
            }
        }
    }

    // What flows into a zone flows out of it: a full linear system for the pressures, by elimination with pivots.
    private void Blow()
    {
        var a = new double[zones, zones + 1];
        foreach (var f in faces)
        {
            if (f.From != Nowhere)
            {
                a[f.From, f.From] += f.Ease;
                a[f.From, zones] -= f.Ease * f.Drive;
                if (f.To != Nowhere)
                {
                    a[f.From, f.To] -= f.Ease;
                }
            }

            if (f.To != Nowhere)
            {
                a[f.To, f.To] += f.Ease;
                a[f.To, zones] += f.Ease * f.Drive;
                if (f.From != Nowhere)
                {
                    a[f.To, f.From] -= f.Ease;
                }
            }
        }

        var pressure = Elimination.Solve(a);
        for (var i = 0; i < faces.Count; i++)
        {
            var f = faces[i];
            var from = f.From == Nowhere ? 0 : pressure[f.From];
            var to = f.To == Nowhere ? 0 : pressure[f.To];
            faces[i] = f with
            {
                Flow = f.Ease * (from - to + f.Drive),
                FlowScale = f.Ease * (Math.Abs(from) + Math.Abs(to) + Math.Abs(f.Drive)),
            };
        }
    }

    private void Rot(int i, Zone z)
    {
        // The cardinal temperatures are felt by the warmth, which falls below 0 while ice forms.
        var heat = Cardinal(
            z.Warmth,
            P(HeapParameter.HeatLowest),
            P(HeapParameter.HeatBest),
            P(HeapParameter.HeatHighest)
        );
        var cool = Cardinal(
            z.Warmth,
            P(HeapParameter.CoolLowest),
            P(HeapParameter.CoolBest),
            P(HeapParameter.CoolHighest)
        );
        var warm = heat + (P(HeapParameter.CoolWeight) * cool * (1 - heat));
        var moisture = z[HeapBlock.Water] / (z[HeapBlock.Water] + z.Dry);
        var damp =
            1
            / (
                1
                + Math.Exp(
                    -P(HeapParameter.DrySteepness) * (moisture - P(HeapParameter.DryMidpoint))
                )
            );
        var oxygen = Math.Max(z[HeapBlock.Oxygen], 0);
        var aired = oxygen / (oxygen + P(HeapParameter.OxygenHalf));
        var active = warm * damp * z[HeapBlock.Activity];

        var fast = P(HeapParameter.FastRate) * active * z[HeapBlock.Fast];
        var slow = P(HeapParameter.SlowRate) * active * F(i, HeapBlock.Size) * z[HeapBlock.Slow];
        var lignin =
            P(HeapParameter.LigninRate) * active * F(i, HeapBlock.Size) * z[HeapBlock.Lignin];
        var carbon = (CarbonShare[0] * fast) + (CarbonShare[1] * slow) + (CarbonShare[2] * lignin);
        var freed =
            (F(i, HeapBlock.FastNitrogen) * fast)
            + (F(i, HeapBlock.SlowNitrogen) * slow)
            + (F(i, HeapBlock.LigninNitrogen) * lignin);

        // Nitrogen: microbes need it with the carbon they take up.
        var need = carbon * P(HeapParameter.Yield) / P(HeapParameter.MicrobeRatio);
        var deficit = Math.Max(need - freed, 0);
        var excess = Math.Max(freed - need, 0);
        var recycled = P(HeapParameter.MicrobeDecay) * warm * z[HeapBlock.Microbe];
        var supply = recycled + (P(HeapParameter.MineralUptake) * z[HeapBlock.Mineral]);
        var filled = Math.Min(supply / (deficit + 1e-12), 1e6);
        var met = filled * Math.Pow(1 + Math.Pow(filled, 4), -0.25);
        var fed = P(HeapParameter.NitrogenFloor) + ((1 - P(HeapParameter.NitrogenFloor)) * met);
        var taken = Math.Min(fed * deficit, supply);

        var held = fed * aired;
        var rotted = (fast + slow + lignin) * held;
        z.OxygenWanted = P(HeapParameter.OxygenDemand) * (fast + slow + lignin) * fed;
        Add(i, HeapBlock.Fast, -fast * held);
        Add(i, HeapBlock.Slow, -slow * held);
        Add(i, HeapBlock.Lignin, -lignin * held);
        var nitrogenScale = aired * ((fed * (need + freed)) + recycled + taken);
        Add(i, HeapBlock.Mineral, aired * ((fed * excess) + recycled - taken), nitrogenScale);
        Add(
            i,
            HeapBlock.Microbe,
            aired * ((fed * (freed - excess)) + taken - recycled),
            nitrogenScale
        );
        var water = P(HeapParameter.MetabolicWater) * rotted;
        Add(i, HeapBlock.Water, water);
        var made = P(HeapParameter.OxygenHeat) * P(HeapParameter.OxygenDemand) * rotted;
        var gone = z.Warmth * ((P(HeapParameter.SolidHeat) * rotted) - (WaterHeat * water));
        Add(i, HeapBlock.Heat, made);
        Add(i, HeapBlock.Heat, -gone);
        Sum(Total.HeatMade, made);
        Sum(Total.MatterHeatOut, gone);
        Sum(Total.CarbonOut, carbon * held);
        Sum(Total.WaterMade, water);

        var a = z[HeapBlock.Activity];
        Add(i, HeapBlock.Activity, P(HeapParameter.ActivityGrowth) * active * aired * (1 - a));
        Add(i, HeapBlock.Activity, P(HeapParameter.ActivitySeed) * warm * (1 - a));
        Add(i, HeapBlock.Activity, -P(HeapParameter.HeatKill) * Math.Exp((z.Celsius - 70) / 4) * a);

        // Ammonia over the dissolved part of the ammonium that is not sorbed.
        var spent = 1 - (z[HeapBlock.Fast] / F(i, HeapBlock.FastAtStart));
        var ph =
            P(HeapParameter.AcidityStart)
            + (
                P(HeapParameter.AcidityRise)
                * aired
                * (1 - Math.Exp(-spent / P(HeapParameter.AcidityPace)))
            );
        var kelvin = z.Celsius + 273.15;
        var free = 1 / (1 + Math.Pow(10, 0.09018 + (2729.92 / kelvin) - ph));
        var henry = 0.2138 / kelvin * Math.Pow(10, 6.123 - (1825 / kelvin));
        z.Ammonia =
            henry
            * free
            * z[HeapBlock.Mineral]
            / P(HeapParameter.AmmoniaHeld)
            / ((z[HeapBlock.Water] + 1e-9) / 1000);
    }

    private static double Cardinal(double t, double lowest, double best, double highest)
    {
        if (t <= lowest || t >= highest)
        {
            return 0;
        }

        var below =
            (best - lowest)
            * (((best - lowest) * (t - best)) - ((best - highest) * (best + lowest - (2 * t))));
        return (t - highest) * Math.Pow(t - lowest, 2) / below;
    }

    // Between two zones: everything counted from the first to the second.
    private void Between(Face f, Zone[] z)
    {
        var (a, b) = (z[f.From], z[f.To]);
        var flow = f.Flow * Day;
        var scale = f.FlowScale * Day;
        var source = flow > 0 ? a : b;
        var gas = (a.Diffusivity + b.Diffusivity) / 2 * Day * f.Area / f.Length;
        var oxygenWay = gas * AirMass;
        b.OxygenWays += Math.Max(flow, 0) + oxygenWay;
        b.OxygenIn += (Math.Max(flow, 0) + oxygenWay) * a[HeapBlock.Oxygen];
        a.OxygenWays += Math.Max(-flow, 0) + oxygenWay;
        a.OxygenIn += (Math.Max(-flow, 0) + oxygenWay) * b[HeapBlock.Oxygen];

        var spread = 1.25 * gas * (a.VapourDensity - b.VapourDensity);
        var spreadScale = 1.25 * gas * (a.VapourDensity + b.VapourDensity);
        Carry(f, HeapBlock.Water, flow * source.Humidity, scale * source.Humidity);
        Carry(f, HeapBlock.Water, spread, spreadScale);
        var content = source.Humidity * VapourContent(source.Celsius);
        Carry(f, HeapBlock.Heat, flow * content, scale * content);
        content = VapourContent((a.Celsius + b.Celsius) / 2);
        Carry(f, HeapBlock.Heat, spread * content, spreadScale * content);
        Carry(
            f,
            HeapBlock.Heat,
            flow * source.Celsius * 1006,
            scale * Math.Abs(source.Celsius) * 1006
        );
        var heatWay = (a.Conductivity + b.Conductivity) / 2 * Day * f.Area / f.Length;
        Carry(
            f,
            HeapBlock.Heat,
            heatWay * (a.Celsius - b.Celsius),
            heatWay * (Math.Abs(a.Celsius) + Math.Abs(b.Celsius))
        );

        if (a.Warmth > 0 && b.Warmth > 0)
        {
            var way =
                P(HeapParameter.CapillaryDiffusivity)
                * ((a.Dry / a.Volume) + (b.Dry / b.Volume))
                / 2
                * f.Area
                / f.Length;
            var seep = way * (a.WaterRatio - b.WaterRatio);
            var seepScale = way * (a.WaterRatio + b.WaterRatio);
            var celsius = seep > 0 ? a.Celsius : b.Celsius;
            Carry(f, HeapBlock.Water, seep, seepScale);
            Carry(f, HeapBlock.Heat, seep * WaterHeat * celsius, seepScale * WaterHeat * celsius);
        }

        Carry(
            f,
            HeapBlock.Mineral,
            flow / AirMass * source.Ammonia,
            scale / AirMass * source.Ammonia
        );
        Carry(f, HeapBlock.Mineral, gas * (a.Ammonia - b.Ammonia), gas * (a.Ammonia + b.Ammonia));
    }

    // Through an outer surface or the ground.
    private void Outward(Face f, Zone[] z, OutsideAir air, WeatherMoment w, double ground)
    {
        var i = f.From == Nowhere ? f.To : f.From;
        var one = z[i];
        var flow = (f.From == Nowhere ? -f.Flow : f.Flow) * Day; // outward
        var scale = f.FlowScale * Day;
        var (heatWay, outside) = (0.0, 0.0);
        var (spread, spreadScale, gasWay) = (0.0, 0.0, 0.0);
        if (f.Way == Way.Base)
        {
            heatWay =
                f.Area
                / (P(HeapParameter.GroundResistance) + (one.Thickness / 2 / one.Conductivity));
            outside = ground;
        }
        else
        {
            var barrier = f.Way == Way.Top ? cover : wall;
            var transfer = P(HeapParameter.SurfaceFactor) * (5.7 + (3.8 * w.Wind));
            outside = w.Air + (f.Way == Way.Top ? 0.7 * w.Sun / transfer : 0);
            heatWay =
                f.Area
                / (
                    (P(HeapParameter.WallFactor) * barrier.Resistance)
                    + (1 / transfer)
                    + (f.Length / one.Conductivity)
                );
            // Mass transfer goes with heat transfer; resistances in s/m.
            var still = 1200 / transfer;
            var vapourWay =
                Day
                * f.Area
                / ((still / barrier.Evaporation) + (f.Length / (1.25 * one.Diffusivity)));
            spread = vapourWay * (one.VapourDensity - air.VapourDensity);
            spreadScale = vapourWay * (one.VapourDensity + air.VapourDensity);
            var openness = Math.Min(P(HeapParameter.EntryFactor) * barrier.Openness, 1);
            gasWay = Day * f.Area / ((still / openness) + (f.Length / one.Diffusivity));
        }

        var conducted = heatWay * Day * (one.Celsius - outside);
        var conductedScale = heatWay * Day * (Math.Abs(one.Celsius) + Math.Abs(outside));
        var (humidity, celsius) = flow > 0 ? (one.Humidity, one.Celsius) : (air.Humidity, w.Air);
        Lose(i, HeapBlock.Heat, Total.SurfaceOut, conducted, conductedScale);
        Lose(
            i,
            HeapBlock.Heat,
            Total.AirOut,
            flow * 1006 * celsius,
            scale * 1006 * Math.Abs(celsius)
        );
        var content = VapourContent(celsius);
        Lose(
            i,
            HeapBlock.Heat,
            Total.LatentOut,
            flow * humidity * content,
            scale * humidity * content
        );
        content = VapourContent(spread > 0 ? one.Celsius : w.Air);
        Lose(i, HeapBlock.Heat, Total.LatentOut, spread * content, spreadScale * content);
        Lose(i, HeapBlock.Water, Total.VapourOut, flow * humidity, scale * humidity);
        Lose(i, HeapBlock.Water, Total.VapourOut, spread, spreadScale);
        Lose(
            i,
            HeapBlock.Mineral,
            Total.AmmoniaOut,
            ((Math.Max(flow, 0) / AirMass) + gasWay) * one.Ammonia,
            ((scale / AirMass) + gasWay) * one.Ammonia
        );
        var oxygenWay = Math.Max(-flow, 0) + (gasWay * AirMass);
        one.OxygenWays += oxygenWay;
        one.OxygenIn += oxygenWay * 0.2095;
    }

    private void Drain(int i, Zone[] z)
    {
        var one = z[i];
        var over = one.WaterRatio - P(HeapParameter.HoldingCapacity);
        if (over <= 0 || one.Warmth <= 0)
        {
            return;
        }

        var flow = over * one.Dry / P(HeapParameter.DrainTime);
        var heat = flow * WaterHeat * one.Celsius;
        var nitrogen = flow * one[HeapBlock.Mineral] / one[HeapBlock.Water];
        Add(i, HeapBlock.Water, -flow);
        Add(i, HeapBlock.Heat, -heat);
        Add(i, HeapBlock.Mineral, -nitrogen);
        var below = i - grid.Rings;
        if (below >= 0)
        {
            Add(below, HeapBlock.Water, flow);
            Add(below, HeapBlock.Heat, heat);
            Add(below, HeapBlock.Mineral, nitrogen);
        }
        else
        {
            Sum(Total.DrainedOut, flow);
            Sum(Total.NitrogenDrained, nitrogen);
            Sum(Total.WaterHeatIn, -heat);
        }
    }

    private void Rain(WeatherMoment w)
    {
        for (var r = 0; r < grid.Rings; r++)
        {
            var water = w.Rain * (1 - cover.Shed) * grid.PlanArea[r];
            var heat = water * WaterHeat * Math.Max(w.Air, 0);
            Add(grid.Zone(r, grid.Layers - 1), HeapBlock.Water, water);
            Add(grid.Zone(r, grid.Layers - 1), HeapBlock.Heat, heat);
            Sum(Total.WaterIn, water);
            Sum(Total.WaterHeatIn, heat);
        }
    }

    // The oxygen at which what comes in is what goes out and what is used; the state follows it.
    private void Breathe(int i, Zone z)
    {
        var used = z.OxygenWanted * 28.97 / 32;
        var (low, high) = (0.0, z.OxygenIn / z.OxygenWays);
        for (var n = 0; n < 200; n++)
        {
            var y = (low + high) / 2;
            var more =
                z.OxygenIn - (z.OxygenWays * y) - (used * y / (y + P(HeapParameter.OxygenHalf)));
            (low, high) = more > 0 ? (y, high) : (low, y);
        }

        var pace = 1 / P(HeapParameter.OxygenTime);
        Add(i, HeapBlock.Oxygen, low * pace);
        Add(i, HeapBlock.Oxygen, -z[HeapBlock.Oxygen] * pace);
    }

    private static double VapourContent(double celsius) => 2.501e6 + (1860 * celsius);

    private void Add(int zone, int state, double value) => Add(zone, state, value, Math.Abs(value));

    private void Add(int zone, int state, double value, double scale)
    {
        Rate[(zone * HeapBlock.PerZone) + state] += value;
        Gross[(zone * HeapBlock.PerZone) + state] += scale;
    }

    private void Carry(Face f, int state, double value, double scale)
    {
        Add(f.From, state, -value, scale);
        Add(f.To, state, value, scale);
    }

    private void Lose(int zone, int state, Total total, double value, double scale)
    {
        Add(zone, state, -value, scale);
        Sum(total, value, scale);
    }

    private void Sum(Total total, double value) => Sum(total, value, Math.Abs(value));

    private void Sum(Total total, double value, double scale)
    {
        Rate[(zones * HeapBlock.PerZone) + (int)total] += value;
        Gross[(zones * HeapBlock.PerZone) + (int)total] += scale;
    }

    private enum Way
    {
        Within,
        Base,
        Top,
        Side,
    }

    private sealed record Face(
        int From,
        int To,
        Way Way,
        double Ease,
        double Drive,
        double Area,
        double Length
    )
    {
        public double Flow { get; init; }

        public double FlowScale { get; init; }
    }

    private sealed class Zone(double[] state)
    {
        public double Dry { get; set; }
        public double WaterRatio { get; set; }
        public double Warmth { get; set; }
        public double Celsius { get; set; }
        public double Volume { get; set; }
        public double Thickness { get; set; }
        public double Diffusivity { get; set; }
        public double Permeability { get; set; }
        public double Conductivity { get; set; }
        public double VapourDensity { get; set; }
        public double Humidity { get; set; }
        public double AirDensity { get; set; }
        public double Ammonia { get; set; }
        public double OxygenWanted { get; set; }
        public double OxygenIn { get; set; }
        public double OxygenWays { get; set; }

        public double this[int which] => state[which];
    }

    private readonly record struct OutsideAir(
        double Density,
        double VapourDensity,
        double Humidity
    );
}
