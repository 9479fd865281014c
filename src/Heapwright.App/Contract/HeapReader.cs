using System.Text;
using Heapwright.App.Sites;
using Heapwright.Core.Heaps;
using Heapwright.Core.Recipes;

namespace Heapwright.App.Contract;

/// <summary>Reads what a kept heap was built of.</summary>
public static class HeapReader
{
    /// <summary>The fields of a question of <c>simulate</c> that tell of the heap itself.</summary>
    public static IReadOnlyList<string> Fields { get; } =
    [
        "bin",
        "ingredients",
        "plan",
        "plans",
        "number",
        "water_l",
        "containers",
        "mixing_volume_factor",
        "cover",
        "walls",
        "start_c",
        "schema",
    ];

    /// <summary>The heap.</summary>
    /// <param name="kept">The heap as it is kept.</param>
    /// <exception cref="InputProblem">Its question is wrong.</exception>
    public static Heap Read(KeptHeap kept)
    {
        ArgumentNullException.ThrowIfNull(kept);
        var input = Input.Read(Encoding.UTF8.GetBytes(kept.Question.GetRawText()), kept.Name);
        input.Fields([.. Fields]);
        var assumptions = new Assumptions(Texts.Measures.Metric);
        var question = new SimulateReader(SimulateLimits.Web, assumptions).Read(input, null);
        return new Heap
        {
            Ingredients = [.. question.Mixture.Ingredients],
            WaterLitres = question.Mixture.Water,
            Bin = question.Bin,
            BuiltAt = kept.BuiltAt.InZone(kept.TimeZone()).ToDateTimeOffset(),
            Zone = kept.Zone,
            Aim = AimOf(kept.Aim),
        };
    }

    private static RecipeAim AimOf(string word) =>
        word switch
        {
            "use_most" => RecipeAim.UseMost,
            "least_cost" => RecipeAim.LeastCost,
            "least_work" => RecipeAim.LeastWork,
            _ => RecipeAim.AllThroughHeat,
        };
}
