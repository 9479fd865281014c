using System.Collections.Immutable;
using Heapwright.App.Library;
using Heapwright.Core.Amounts;
using Heapwright.Core.Bins;
using Heapwright.Core.Materials;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;
using Heapwright.Core.Simulation;

namespace Heapwright.Validation.Simulation;

/// <summary>A heap described well enough to be simulated from its recipe alone.</summary>
/// <param name="Name">A short name.</param>
/// <param name="Bin">What holds it; it is filled to the brim.</param>
/// <param name="Parts">Materials of the library and their shares of the dry matter.</param>
public sealed record HeapCase(
    string Name,
    Bin Bin,
    ImmutableArray<(string Material, double DryShare)> Parts
)
{
    /// <summary>Moisture of the whole, % wet; null for that of the materials.</summary>
    public double? Moisture { get; init; }

    /// <summary>Loose density of the whole, wet, kg/m³; null for that of the materials.</summary>
    public double? Density { get; init; }

    /// <summary>C:N of the whole; null for that of the materials.</summary>
    public double? Ratio { get; init; }

    /// <summary>Mean air temperature, °C.</summary>
    public double Air { get; init; } = 15;

    /// <summary>Half the daily range, K.</summary>
    public double Swing { get; init; } = 5;

    /// <summary>Temperature of the matter when built, °C; null for that of the air.</summary>
    public double? Start { get; init; }

    /// <summary>The walls.</summary>
    public string Walls { get; init; } = "none";

    /// <summary>The cover.</summary>
    public string Cover { get; init; } = "none";

    /// <summary>Days simulated.</summary>
    public double Days { get; init; } = 30;

    /// <summary>Days on which it is turned.</summary>
    public ImmutableArray<double> Turns { get; init; } = [];

    /// <summary>Days over which it is filled in equal daily parts; 0 where it is filled at once.</summary>
    public int FedDays { get; init; }

    /// <summary>Simulates it.</summary>
    /// <param name="parameters">The parameters.</param>
    /// <param name="members">How many members.</param>
    /// <param name="weather">Its weather; null for the mean and swing of the case.</param>
    /// <param name="events">What else is done to it.</param>
    public SimulationAnswer Run(
        HeapParameters parameters,
        int members = 1,
        Weather? weather = null,
        params ReadOnlySpan<HeapEvent> events
    ) => HeapSimulation.Run(Question(parameters, members, weather, events));

    /// <summary>It as a question.</summary>
    /// <param name="parameters">The parameters.</param>
    /// <param name="members">How many members.</param>
    /// <param name="weather">Its weather; null for the mean and swing of the case.</param>
    /// <param name="events">What else is done to it.</param>
    public SimulationQuestion Question(
        HeapParameters parameters,
        int members,
        Weather? weather,
        params ReadOnlySpan<HeapEvent> events
    )
    {
        const double Guess = 100; // kg dry
        var first = MixtureOf(Guess);
        var built = HeapSimulation.LooseBuiltVolume(Mixture.Of(first), parameters);
        var dry = Guess * Bin.Volume.CubicMeters / built;
        // A bin that is fed shrinks as it fills: in the end it holds what it would not hold at once.
        var part = FedDays > 0 ? dry / FedDays * 1.5 : 0;
        return new SimulationQuestion
        {
            Bin = Bin,
            Mixture = MixtureOf(FedDays > 0 ? part * 3 : dry),
            Parameters = parameters,
            Weather = weather ?? Weather.Steady(new WeatherMoment(Air, 1, 0, 0.7, 0), Swing),
            StartCelsius = Start,
            Walls = Surroundings.Walls[Walls],
            Cover = Surroundings.Covers[Cover],
            Days = Days,
            Members = members,
            Events =
            [
                .. events,
                .. Turns.Select(d => new Turned(d, 0.8, TurnedPart.All)),
                .. Enumerable
                    .Range(1, Math.Max(FedDays - 3, 0))
                    .Select(d => new Added(d, MixtureOf(part).Ingredients)),
            ],
        };
    }

    private MixtureQuestion MixtureOf(double dry)
    {
        var shares = Parts.Sum(p => p.DryShare);
        var ingredients = ImmutableArray.CreateBuilder<Ingredient>();
        // A mixture fills less than its parts do (docs/models/mixtures.md), so each is loose enough for the whole.
        var packing = Parts.Length > 1 ? 0.85 : 1;
        // The ratio of the whole is met by scaling the nitrogen of every part.
        var (carbon, nitrogen) = (0.0, 0.0);
        foreach (var (id, share) in Parts)
        {
            var p = LibraryReader.Library.Find(id)!.Properties;
            carbon += share * p[MaterialProperty.Carbon]!.Value.Typical;
            nitrogen += share * p[MaterialProperty.Nitrogen]!.Value.Typical;
        }

        var factor = Ratio is { } ratio ? carbon / nitrogen / ratio : 1;
        foreach (var (id, share) in Parts)
        {
            var material = LibraryReader.Library.Find(id)!;
            var p = material.Properties;
            var own = p[MaterialProperty.Moisture]!.Value.Typical;
            var moisture = Moisture ?? own;
            // Density with another moisture: the same dry matter in the same volume.
            var density =
                Density * packing
                ?? p[MaterialProperty.BulkDensity]!.Value.Typical * (100 - own) / (100 - moisture);
            var properties = p.With(MaterialProperty.Moisture, Spread.Exact(moisture))
                .With(MaterialProperty.BulkDensity, Spread.Exact(density));
            if (factor != 1)
            {
                properties = properties.With(
                    MaterialProperty.Nitrogen,
                    p[MaterialProperty.Nitrogen]!.Value.Times(factor)
                );
            }

            ingredients.Add(
                new Ingredient
                {
                    Name = material.Name,
                    Material = material,
                    Properties = properties,
                    Amount = Spread.Exact(dry * share / shares / (1 - (moisture / 100))),
                    Unit = UnitSize.OfMass("kg", Spread.Exact(1), false),
                }
            );
        }

        return new MixtureQuestion { Ingredients = ingredients.ToImmutable() };
    }
}
