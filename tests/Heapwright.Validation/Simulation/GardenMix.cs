using Heapwright.App.Library;
using Heapwright.Core.Amounts;
using Heapwright.Core.Bins;
using Heapwright.Core.Materials;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;
using Heapwright.Core.Simulation;
using UnitsNet;

namespace Heapwright.Validation.Simulation;

/// <summary>A well-made garden mixture in one piece, exact, whose single properties can be changed; invented.</summary>
public sealed record GardenMix
{
    /// <summary>Built volume, m³.</summary>
    public double CubicMetres { get; init; } = 1;

    /// <summary>Dry matter per built volume, kg/m³.</summary>
    public double Dry { get; init; } = 189;

    /// <summary>C:N.</summary>
    public double Ratio { get; init; } = 30;

    /// <summary>% wet.</summary>
    public double Moisture { get; init; } = 58;

    /// <summary>Fast share, % dry.</summary>
    public double Fast { get; init; } = 22;

    /// <summary>Lignin, % dry.</summary>
    public double Lignin { get; init; } = 14.4;

    /// <summary>Particle class of the library.</summary>
    public string Particle { get; init; } = "medium";

    /// <summary>Mean air temperature, °C.</summary>
    public double Air { get; init; } = 15;

    /// <summary>Half the daily range, K.</summary>
    public double Swing { get; init; } = 5;

    /// <summary>Rain, mm a day.</summary>
    public double Rain { get; init; }

    /// <summary>Temperature when built, °C; null for that of the air.</summary>
    public double? Start { get; init; }

    /// <summary>The walls.</summary>
    public string Walls { get; init; } = "slatted";

    /// <summary>The cover.</summary>
    public string Cover { get; init; } = "breathable";

    /// <summary>The bin; null for a cube of the built volume.</summary>
    public Bin? Bin { get; init; }

    /// <summary>What is done.</summary>
    public IReadOnlyList<HeapEvent> Events { get; init; } = [];

    /// <summary>Days.</summary>
    public double Days { get; init; } = 30;

    /// <summary>Members.</summary>
    public int Members { get; init; } = 1;

    /// <summary>Refinement of the grid.</summary>
    public int Refinement { get; init; } = 1;

    /// <summary>Tolerated error of a step, K.</summary>
    public double Tolerance { get; init; } = 0.03;

    /// <summary>The parameters.</summary>
    public HeapParameters Parameters { get; init; } = ParameterReader.Table;

    /// <summary>The mixture as an ingredient, in kg.</summary>
    public Ingredient Ingredient
    {
        get
        {
            const double Carbon = 46;
            const double Ash = 12;
            var dry = Dry * CubicMetres;
            var water = dry * Moisture / (100 - Moisture);
            // Loose enough to have the wanted volume once built.
            var solid =
                (dry * (100 - Ash) / 100 / 1600) + (dry * Ash / 100 / 2500) + (water / 1000);
            var filled =
                solid + ((CubicMetres - solid) / Parameters.Usual(HeapParameter.BuiltVolume));
            var properties = MaterialProperties
                .None.With(MaterialProperty.Carbon, Spread.Exact(Carbon))
                .With(MaterialProperty.Nitrogen, Spread.Exact(Carbon / Ratio))
                .With(MaterialProperty.Moisture, Spread.Exact(Moisture))
                .With(MaterialProperty.BulkDensity, Spread.Exact((dry + water) / filled))
                .With(MaterialProperty.Ash, Spread.Exact(Ash))
                .With(MaterialProperty.Lignin, Spread.Exact(Lignin))
                .With(MaterialProperty.Fast, Spread.Exact(Fast))
                .With(MaterialProperty.StiffShare, Spread.Exact(25))
                .With(MaterialProperty.UnsupportedVolume, Spread.Exact(70))
                .With(MaterialProperty.Phosphorus, Spread.Exact(0.3))
                .With(MaterialProperty.Potassium, Spread.Exact(1));
            return new Ingredient
            {
                Name = "garden mix",
                Material = LibraryReader.Library.Find("garden_waste_mixed")! with
                {
                    Particle = Particle,
                },
                Properties = properties,
                Amount = Spread.Exact(dry + water),
                Unit = UnitSize.OfMass("kg", Spread.Exact(1), false),
            };
        }
    }

    /// <summary>Simulates it.</summary>
    public SimulationAnswer Run()
    {
        var side = Length.FromMeters(Math.Cbrt(CubicMetres));
        return HeapSimulation.Run(
            new SimulationQuestion
            {
                Bin = Bin ?? Bin.Box(side, side, side),
                Mixture = new MixtureQuestion { Ingredients = [Ingredient] },
                Parameters = Parameters,
                Weather = Weather.Steady(new WeatherMoment(Air, 1, Rain, 0.7, 0), Swing),
                StartCelsius = Start,
                Walls = Surroundings.Walls[Walls],
                Cover = Surroundings.Covers[Cover],
                Events = [.. Events],
                Days = Days,
                Members = Members,
                Refinement = Refinement,
                Tolerance = Tolerance,
            }
        );
    }
}
