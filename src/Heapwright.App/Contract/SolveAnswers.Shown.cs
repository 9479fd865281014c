using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heapwright.App.Texts;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Reasons;

namespace Heapwright.App.Contract;

/// <content>How an answer is shown.</content>
public static partial class SolveAnswers
{
    private static string KilogramsShown(Assumptions assumptions, double kilograms) =>
        assumptions.Measures.KilogramsAsGiven(kilograms);

    private static string LitresShown(Assumptions assumptions, double litres) =>
        Words.Of("mixtures.of_water", null, assumptions.Measures.LitresAsGiven(litres));

    private static Answer Yes(
        Assumptions assumptions,
        ImmutableArray<Known> parts,
        JsonNode? mass,
        double water,
        params string[] shown
    ) =>
        new(
            new JsonObject
            {
                ["schema"] = Json.Schema,
                ["mass_kg"] = mass,
                ["water_l"] = water,
                ["assumptions"] = assumptions.ToJson(),
                ["cautions"] = MaterialCautions.Of(parts.Select(p => p.Ingredient?.Material)),
            },
            Yes: true,
            string.Join(" + ", shown) + "\n"
        );

    private static Answer Cannot(
        Assumptions assumptions,
        ImmutableArray<Known> parts,
        Reason why
    ) =>
        new(
            new JsonObject
            {
                ["schema"] = Json.Schema,
                ["cannot"] = new JsonObject { ["why"] = assumptions.Measures.Say(why) },
                ["assumptions"] = assumptions.ToJson(),
                ["cautions"] = MaterialCautions.Of(parts.Select(p => p.Ingredient?.Material)),
            },
            Yes: false,
            assumptions.Measures.Say(why) + "\n"
        );

    // Without nitrogen the ratio has no end.
    private static object Shown(double value) =>
        double.IsFinite(value) ? value : Words.Of("mixtures.without_nitrogen");

    private static double Percent(MassBalance matter) => 100 * matter.Water / matter.WetMass;
}
