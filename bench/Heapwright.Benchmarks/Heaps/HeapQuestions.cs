using Heapwright.App.Library;
using Heapwright.Core.Amounts;
using Heapwright.Core.Bins;
using Heapwright.Core.Materials;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;
using Heapwright.Core.Simulation;
using UnitsNet;

namespace Heapwright.Benchmarks.Heaps;

/// <summary>The heap that is simulated: about a cubic metre of a usual garden mixture under a daily swing.</summary>
internal static class HeapQuestions
{
    public static SimulationQuestion Usual(int members, int refinement, double tolerance) =>
        Of("usual", members, refinement, tolerance);

    public static SimulationQuestion Of(string name, int members, int refinement, double tolerance)
    {
        static Length M(double metres) => Length.FromMeters(metres);
        var cubic = Bin.Box(M(1.1), M(1.1), M(1));
        return name switch
        {
            "usual" => Ask(
                cubic,
                15,
                70,
                ("grass_clippings_fresh", 350),
                ("leaves_mixed_dry", 500),
                ("wheat_straw", 250)
            ),
            "cold" => Ask(
                cubic,
                3,
                60,
                ("grass_clippings_fresh", 350),
                ("leaves_mixed_dry", 500),
                ("wheat_straw", 250)
            ),
            "small" => Ask(
                Bin.Box(M(0.7), M(0.7), M(0.7)),
                15,
                20,
                ("grass_clippings_fresh", 120),
                ("leaves_mixed_dry", 180),
                ("wheat_straw", 70)
            ),
            "windrow" => Ask(
                Bin.Windrow(M(4), M(1.8), M(1.1)),
                15,
                300,
                ("grass_clippings_fresh", 1700),
                ("leaves_mixed_dry", 2600),
                ("wheat_straw", 1200)
            ),
            "ring" => Ask(
                Bin.Ring(M(1.1), M(1.1)),
                20,
                60,
                ("grass_clippings_wilted", 350),
                ("leaves_mixed_moist", 500),
                ("wheat_straw", 250)
            ),
            _ => throw new ArgumentException("no such heap: " + name, nameof(name)),
        };

        SimulationQuestion Ask(
            Bin bin,
            double air,
            double litres,
            params (string Material, double Litres)[] parts
        ) =>
            new()
            {
                Bin = bin,
                Mixture = new MixtureQuestion
                {
                    Ingredients =
                    [
                        .. parts.Select(p => Part(LibraryReader.Library.Find(p.Material), p)),
                    ],
                    Water = Spread.Exact(litres),
                },
                Parameters = ParameterReader.Table,
                Weather = Weather.Steady(new WeatherMoment(air, 1, 0, 0.7, 0), 5),
                Members = members,
                Refinement = refinement,
                Tolerance = tolerance,
                FollowParcels = false,
            };
    }

    private static Ingredient Part(Material? material, (string Name, double Litres) part) =>
        material is null
            ? throw new InvalidOperationException("no such material: " + part.Name)
            : new Ingredient
            {
                Name = material.Name,
                Material = material,
                Properties = material.Properties,
                Amount = Spread.Exact(part.Litres),
                Unit = MeasureUnits.Find("l")!,
            };
}
