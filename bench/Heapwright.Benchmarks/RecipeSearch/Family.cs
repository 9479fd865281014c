using Heapwright.Numerics.Search;

namespace Heapwright.Benchmarks.RecipeSearch;

/// <summary>A kind of random instance.</summary>
/// <param name="Name">What it is called on the command line.</param>
/// <param name="About">What it is.</param>
/// <param name="Make">The instance of a seed.</param>
internal sealed record Family(string Name, string About, Func<int, ChanceProblem> Make)
{
    /// <summary>All kinds.</summary>
    internal static readonly Family[] All =
    [
        new(
            "garden",
            "12 materials of data/materials.csv, each measured once: half of the library's spread is left",
            seed => GardenInstances.Make(seed, 0.5)
        ),
        new(
            "untested",
            "the same materials with the whole spread of the library; most of these cannot be met at a chance of 90 %",
            seed => GardenInstances.Make(seed, 1)
        ),
        new(
            "hard",
            "made-up materials, 20 % noise on nitrogen against C:N 25-35: near infeasibility",
            seed => FirstObjective(RecipeInstances.Make(seed))
        ),
    ];

    private static ChanceProblem FirstObjective(ChanceProblem p) =>
        new()
        {
            Lower = p.Lower,
            Upper = p.Upper,
            Objectives = [p.Objectives[0]],
            FreeSlopes = p.FreeSlopes,
            Nominal = p.Nominal,
            ScenarioCount = p.ScenarioCount,
            Scenarios = p.Scenarios,
            Chance = p.Chance,
            FreeMaximum = p.FreeMaximum,
            FreePreferredSlopes = p.FreePreferredSlopes,
            LimitCoefficients = p.LimitCoefficients,
            Limits = p.Limits,
        };
}
