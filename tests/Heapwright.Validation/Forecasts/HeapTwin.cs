using System.Collections.Immutable;
using Heapwright.App.Library;
using Heapwright.Core.Bins;
using Heapwright.Core.Materials;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;
using Heapwright.Core.Readings;
using Heapwright.Core.Simulation;
using Heapwright.Numerics.Sampling;
using Heapwright.Validation.Simulation;
using UnitsNet;

namespace Heapwright.Validation.Forecasts;

/// <summary>
/// An invented heap of which the truth is known: what is really in it, how it really rots and what the weather really
/// does are drawn at random; the forecast is told only what a person would know, and readings with errors.
/// </summary>
public sealed class HeapTwin
{
    private const double ReadingNoise = 2; // K from one reading to the next
    private const double DialNoise = 1; // K that stay with the dial
    private const double SlipChance = 0.03;
    private const double Slip = 15; // K

    private readonly SplitMix64 start;
    private readonly TwinStructure structure;
    private readonly ImmutableArray<HeapEvent> plans;
    private readonly int sibling;
    private SplitMix64 stream;
    private SplitMix64 between;

    /// <summary>Draws a twin.</summary>
    /// <param name="number">Its number; the same number is the same twin.</param>
    /// <param name="structure">In what the truth differs from the model that is fitted.</param>
    /// <param name="sibling">
    /// 0 for the heap itself. Another number is another heap of the same person by the same recipe: it is believed to be
    /// the same, and half of what varies in its truth (by its variance) is that of the first.
    /// </param>
    public HeapTwin(int number, TwinStructure structure, int sibling = 0)
    {
        this.structure = structure;
        this.sibling = sibling;
        between = new SplitMix64(SplitMix64.SeedFor((ulong)((1000 * number) + sibling), "sibling"));
        stream = new SplitMix64(SplitMix64.SeedFor((ulong)number, "twin"));
        var believed = new GardenMix
        {
            CubicMetres = Between(0.5, 1.6),
            Dry = Between(140, 230),
            Ratio = Between(20, 42),
            Moisture = Between(48, 66),
            Fast = Between(10, 28),
            Air = Between(3, 22),
            Swing = Between(2, 7),
            Walls = stream.NextUnit() < 0.5 ? "slatted" : "timber",
        };
        plans =
            stream.NextUnit() < 0.4
                ? [new Turned(Math.Round(Between(3, 9)), 0.8, TurnedPart.All)]
                : [];
        Believed = believed;
        Spreads = Beliefs(believed);
        Truth = believed with
        {
            CubicMetres = believed.CubicMetres * Math.Exp(0.08 * Normal()),
            Ratio = Drawn(Spread.Of(0.82, 1, 1.22)) * believed.Ratio,
            Moisture = Math.Clamp(believed.Moisture + (4 * Normal()), 25, 80),
            Fast = Math.Clamp(Drawn(Spread.Of(0.65, 1, 1.5)) * believed.Fast, 3, 45),
            Parameters = TrueParameters(),
            Refinement = structure == TwinStructure.Same ? 1 : 2,
        };
        TrueWeather = Weathered(believed);
        start = sibling == 0 ? stream : between;
    }

    /// <summary>What a person believes of it, at the middle.</summary>
    public GardenMix Believed { get; }

    /// <summary>What is really so.</summary>
    public GardenMix Truth { get; }

    /// <summary>The weather as it really was.</summary>
    public Weather TrueWeather { get; }

    /// <summary>The ingredient as believed, with its ranges.</summary>
    public Ingredient Spreads { get; }

    /// <summary>The heap as it was believed to be.</summary>
    /// <param name="members">Members of the fit.</param>
    public SimulationQuestion Question(int members = 200) =>
        new()
        {
            Bin = Side(Believed),
            Mixture = new MixtureQuestion { Ingredients = [Spreads] },
            Parameters = ParameterReader.Table,
            Weather = Weather.Steady(new WeatherMoment(Believed.Air, 1, 0, 0.7, 0), Believed.Swing),
            Walls = Surroundings.Walls[Believed.Walls],
            Events = plans,
            Members = members,
        };

    /// <summary>What really comes of it.</summary>
    /// <param name="days">To which day.</param>
    /// <param name="events">What is done; null for what was planned.</param>
    public SimulationAnswer Live(double days, ImmutableArray<HeapEvent>? events = null) =>
        HeapSimulation.Run(
            new SimulationQuestion
            {
                Bin = Side(Believed),
                Mixture = new MixtureQuestion { Ingredients = [Truth.Ingredient] },
                Parameters = Truth.Parameters,
                Weather = TrueWeather,
                Walls = Surroundings.Walls[Believed.Walls],
                Events = events ?? plans,
                Days = days,
                Members = 1,
                Refinement = Truth.Refinement,
            }
        );

    /// <summary>What a person reads off a dial in the core.</summary>
    /// <param name="truth">What really came of it.</param>
    /// <param name="days">When.</param>
    public ImmutableArray<ProbeReading> Read(SimulationAnswer truth, IEnumerable<double> days)
    {
        var from = start;
        var dial = DialNoise * Standard(ref from);
        var readings = ImmutableArray.CreateBuilder<ProbeReading>();
        foreach (var day in days)
        {
            var slip = from.NextUnit() < SlipChance ? Slip * Math.Sign(Standard(ref from)) : 0;
            readings.Add(
                new ProbeReading(
                    day,
                    Temperature.FromDegreesCelsius(
                        Core(truth, day) + dial + (ReadingNoise * Standard(ref from)) + slip
                    )
                )
            );
        }

        return readings.ToImmutable();
    }

    /// <summary>The true core.</summary>
    /// <param name="truth">What really came of it.</param>
    /// <param name="day">When.</param>
    public static double Core(SimulationAnswer truth, double day)
    {
        var after = 0;
        while (truth.Days[after] < day)
        {
            after++;
        }

        if (truth.Days[after] == day)
        {
            return truth.Core[after][0];
        }

        var (a, b) = (truth.Days[after - 1], truth.Days[after]);
        var share = (day - a) / (b - a);
        return ((1 - share) * truth.Core[after - 1][0]) + (share * truth.Core[after][0]);
    }

    private static Bin Side(GardenMix mix)
    {
        var side = Length.FromMeters(Math.Cbrt(mix.CubicMetres * 1.15));
        return Bin.Box(side, side, side);
    }

    private static Ingredient Beliefs(GardenMix mix)
    {
        var exact = mix.Ingredient;
        Spread Times(MaterialProperty property, double low, double high)
        {
            var value = exact.Properties[property]!.Value.Typical;
            return Spread.Of(low * value, value, high * value);
        }

        var moisture = exact.Properties[MaterialProperty.Moisture]!.Value.Typical;
        return exact with
        {
            Properties = exact
                .Properties.With(
                    MaterialProperty.Moisture,
                    Spread.Of(moisture - 6.6, moisture, moisture + 6.6)
                )
                .With(MaterialProperty.Nitrogen, Times(MaterialProperty.Nitrogen, 0.82, 1.22))
                .With(MaterialProperty.Fast, Times(MaterialProperty.Fast, 0.65, 1.5)),
            Amount = Spread.Of(
                0.87 * exact.Amount.Typical,
                exact.Amount.Typical,
                1.15 * exact.Amount.Typical
            ),
        };
    }

    private HeapParameters TrueParameters()
    {
        var table = ParameterReader.Table;
        var changes = new List<(HeapParameter, double)>();
        foreach (var parameter in Enum.GetValues<HeapParameter>())
        {
            var prior = table.Prior(parameter);
            if (!prior.IsExact)
            {
                var value = prior.AtScore(Normal(), HeapParameters.Scale);
                changes.Add(
                    (
                        parameter,
                        parameter == HeapParameter.StartActivity ? Math.Min(value, 1) : value
                    )
                );
            }
        }

        if (structure == TwinStructure.Other)
        {
            // Kinetics of another shape, beyond what the fit may vary: a weak cool guild, a gentler answer to dryness,
            // oxygen that follows at once, heat that kills faster, nitrogen that comes slower.
            changes.Add((HeapParameter.CoolWeight, 0.15));
            changes.Add((HeapParameter.HeatLowest, -2));
            changes.Add((HeapParameter.DrySteepness, 11));
            changes.Add((HeapParameter.OxygenTime, 0.01));
            changes.Add((HeapParameter.HeatKill, 0.6));
            changes.Add((HeapParameter.MineralUptake, 0.25));
        }

        return table.With([.. changes]);
    }

    // Days warmer and colder than the mean, each like the one before; the forecast knows only the mean.
    private Weather Weathered(GardenMix mix)
    {
        var days = new List<double>();
        var moments = new List<WeatherMoment>();
        var anomaly = 2.5 * Normal();
        for (var hour = 0; hour <= 24 * 60; hour += 2)
        {
            if (hour % 24 == 0)
            {
                anomaly = (0.7 * anomaly) + (2.5 * Math.Sqrt(1 - 0.49) * Normal());
            }

            days.Add(hour / 24.0);
            var clock = 12 + hour;
            moments.Add(
                new WeatherMoment(
                    mix.Air + anomaly + (mix.Swing * Math.Cos(2 * Math.PI * (clock - 15) / 24)),
                    1,
                    0,
                    0.7,
                    0
                )
            );
        }

        return Weather.Series([.. days], [.. moments]);
    }

    private double Drawn(Spread spread) => spread.AtScore(Normal(), SpreadScale.Positive);

    private double Normal()
    {
        var first = Standard(ref stream);
        return sibling == 0 ? first : (0.5 * first) + (Math.Sqrt(0.75) * Standard(ref between));
    }

    private static double Standard(ref SplitMix64 from) =>
        NormalDistribution.Quantile(Math.Clamp(from.NextUnit(), 1e-9, 1 - 1e-9));

    private double Between(double low, double high) => low + ((high - low) * stream.NextUnit());
}
