using System.Collections.Immutable;

namespace Heapwright.Core.BuildPlans;

/// <summary>Tools and place, as codes.</summary>
internal static class BuildAdvice
{
    /// <summary>The tools for this very heap.</summary>
    public static ImmutableArray<string> Tools(IReadOnlyList<Stuff> stuffs, double water)
    {
        var tools = new List<string> { "fork", "gloves" };
        if (stuffs.Sum(s => s.Litres) > 150)
        {
            tools.Add("barrow");
        }

        tools.Add("bucket");
        if (water >= 1)
        {
            tools.Add("watering_can");
        }

        Add(tools, stuffs, "shears", "chop_short");
        Add(tools, stuffs, "mower", "shred");
        Add(tools, stuffs, "knife", "remove_tape_and_plastic");
        if (water >= 1)
        {
            Add(tools, stuffs, "soaking_tub", "soak_first");
        }

        if (
            stuffs.Any(s =>
                s.Ingredient.Material is { } m
                && (
                    m.Cautions.Contains("dust_mould", StringComparer.Ordinal)
                    || m.Cautions.Contains("legionella_dust", StringComparer.Ordinal)
                )
            )
        )
        {
            tools.Add("dust_mask");
        }

        tools.Add("tape_measure");
        tools.Add("thermometer");
        return [.. tools];
    }

    /// <summary>Where to stand it.</summary>
    public static ImmutableArray<string> Place(IReadOnlyList<Stuff> stuffs)
    {
        var place = new List<string> { "shade", "barrow_way", "bare_soil", "run_off", "empty_bay" };
        if (stuffs.Any(s => s.Class == StuffClass.Kitchen))
        {
            place.Add("animals");
        }

        place.Add("away_from_walls");
        return [.. place];
    }

    private static void Add(
        List<string> tools,
        IEnumerable<Stuff> stuffs,
        string tool,
        string prepare
    )
    {
        if (stuffs.Any(s => s.Prepare.Contains(prepare, StringComparer.Ordinal)))
        {
            tools.Add(tool);
        }
    }
}
