using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heapwright.App.Library;
using Heapwright.App.Texts;
using Heapwright.Core.Amounts;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;
using Heapwright.Core.Reasons;
using Heapwright.Numerics.Sampling;

namespace Heapwright.App.Contract;

/// <summary>Answers <c>solve</c>: the closed forms, with typical values; an impossible target is refused with the reason.</summary>
public static partial class SolveAnswers
{
    private const string ForMoisture = "moisture_pct_wb";
    private const string ForRatio = "carbon_nitrogen_ratio";

    private static readonly Dictionary<string, string[]> FieldsOf = new(StringComparer.Ordinal)
    {
        ["mass_of_second"] = ["for", "target", "first", "second"],
        ["water"] = ["target_moisture_pct_wb", "ingredients"],
        ["two_unknowns"] = ["targets", "fixed", "unknown"],
    };

    private static readonly string[] Measured =
    [
        .. IngredientReader.MaterialFields,
        "amount",
        "mass_kg",
    ];

    private static readonly UnitSize Kilogram = MeasureUnits.Find("kg")!;

    /// <summary>Answers a question.</summary>
    /// <param name="input">The question.</param>
    /// <param name="measures">The measures of its sentences and its text; metric if null.</param>
    /// <exception cref="InputProblem">The question is wrong.</exception>
    public static Answer Answer(Input input, Measures? measures = null)
    {
        var fields = input.Fields([
            "find",
            .. FieldsOf.Values.SelectMany(f => f),
            "containers",
            "schema",
        ]);
        fields["schema"]?.Whole(Json.Schema, Json.Schema);
        var assumptions = new Assumptions(measures ?? Measures.Metric);
        var reader = new IngredientReader(
            LibraryReader.Library,
            ContainerReader.Read(fields["containers"]),
            assumptions
        )
        {
            SaysMake = false,
        };
        var find = fields.Needed("find").Choice([.. FieldsOf.Keys]);
        fields.OnlyOf(find, FieldsOf[find], FieldsOf.Values.SelectMany(f => f));
        return find switch
        {
            "mass_of_second" => SecondMass(fields, reader, assumptions),
            "water" => Water(fields, reader, assumptions),
            _ => TwoUnknowns(fields, reader, assumptions),
        };
    }

    private static Answer SecondMass(
        InputFields fields,
        IngredientReader reader,
        Assumptions assumptions
    )
    {
        var goal = fields.Needed("for").Choice(ForMoisture, ForRatio);
        var moisture = goal == ForMoisture;
        var needs = moisture ? MaterialNeeds.Moisture : MaterialNeeds.Balance;
        var target = moisture
            ? fields.Needed("target").Number(0, 99.9)
            : fields.Needed("target").Number(0.1, 5000);
        var first = Quantity(fields.Needed("first"), reader, needs, assumptions);
        if (first.Balance.WetMass <= 0)
        {
            throw fields.Needed("first").Problem("the amount is 0; above 0 is needed");
        }

        var second = OneKilogram(fields.Needed("second"), reader, needs, assumptions);
        if (!moisture && first.Balance is { Carbon: 0, Nitrogen: 0 })
        {
            return Cannot(assumptions, [first, second], Reason.Of("mixtures.cannot_no_matter"));
        }

        var (a, b) = moisture
            ? (Percent(first.Balance), Percent(second.Balance))
            : (
                first.Balance.Carbon / first.Balance.Nitrogen,
                second.Balance.Carbon / second.Balance.Nitrogen
            );
        var mass = moisture
            ? ClosedForms.SecondMassForMoisture(first.Balance.WetMass, a, b, target)
            : ClosedForms.SecondMassForRatio(first.Balance, second.Balance, target);
        if (!double.IsFinite(mass))
        {
            return Cannot(
                assumptions,
                [first, second],
                Reason.Of("mixtures.cannot_equal", Shown(b))
            );
        }

        if (mass < 0)
        {
            return Cannot(
                assumptions,
                [first, second],
                Reason.Of("mixtures.cannot_between", target, Shown(a), Shown(b))
            );
        }

        return Yes(assumptions, [first, second], mass, 0, KilogramsShown(assumptions, mass));
    }

    private static Answer Water(
        InputFields fields,
        IngredientReader reader,
        Assumptions assumptions
    )
    {
        var target = fields.Needed("target_moisture_pct_wb").Number(0, 99.9);
        var parts = Quantities(
            fields.Needed("ingredients"),
            1,
            reader,
            MaterialNeeds.Moisture,
            assumptions
        );
        var sum = Something(fields.Needed("ingredients"), parts);
        var water = ClosedForms.WaterForMoisture(sum.WetMass, sum.Water, target);
        return water < 0
            ? Cannot(
                assumptions,
                parts,
                Reason.Of(
                    "mixtures.cannot_negative_water",
                    Percent(sum),
                    target,
                    assumptions.Measures.LitresToTheTenth(-water)
                )
            )
            : Yes(assumptions, parts, water, water, LitresShown(assumptions, water));
    }

    private static Answer TwoUnknowns(
        InputFields fields,
        IngredientReader reader,
        Assumptions assumptions
    )
    {
        var targets = fields.Needed("targets").Fields(ForRatio, ForMoisture);
        var ratio = targets.Needed(ForRatio).Number(0.1, 5000);
        var moisture = targets.Needed(ForMoisture).Number(0, 99.9);
        var parts = Quantities(
            fields.Needed("fixed"),
            1,
            reader,
            MaterialNeeds.Balance,
            assumptions
        );
        var unknown = fields.Needed("unknown").Items(2, 2);
        var known = new Known[2];
        for (var i = 0; i < 2; i++)
        {
            known[i] =
                !unknown[i].IsText
                    ? OneKilogram(unknown[i], reader, MaterialNeeds.Balance, assumptions)
                : unknown[i].Text() == "water"
                    ? new Known(null, default(MassBalance) with { WetMass = 1 })
                : OfLibrary(unknown[i], reader, assumptions);
        }

        if (known[0].Ingredient is null && known[1].Ingredient is null)
        {
            throw fields
                .Needed("unknown")
                .Problem("both unknowns are water; one of them must be a material");
        }

        var (x, y) = ClosedForms.TwoUnknowns(
            Something(fields.Needed("fixed"), parts),
            known[0].Balance,
            known[1].Balance,
            ratio,
            moisture
        );
        ImmutableArray<Known> all = [.. parts, .. known];
        if (!double.IsFinite(x) || !double.IsFinite(y))
        {
            return Cannot(assumptions, all, Reason.Of("mixtures.cannot_dependent"));
        }

        double[] masses = [x, y];
        for (var i = 0; i < 2; i++)
        {
            if (masses[i] < 0)
            {
                var why = known[i].Ingredient is { } ingredient
                    ? Reason.Of(
                        "mixtures.cannot_negative_pair",
                        ingredient.Name,
                        UnitsNet.Mass.FromKilograms(masses[i])
                    )
                    : Reason.Of(
                        "mixtures.cannot_negative_pair_water",
                        assumptions.Measures.LitresToTheTenth(-masses[i])
                    );
                return Cannot(assumptions, all, why);
            }
        }

        var water = 0.0;
        for (var i = 0; i < 2; i++)
        {
            water += known[i].Ingredient is null ? masses[i] : 0;
        }

        return Yes(
            assumptions,
            all,
            new JsonArray(x, y),
            water,
            [
                .. masses.Select(
                    (mass, i) =>
                        known[i].Ingredient is null
                            ? LitresShown(assumptions, mass)
                            : KilogramsShown(assumptions, mass)
                ),
            ]
        );
    }

    private static ImmutableArray<Known> Quantities(
        Input input,
        int fewest,
        IngredientReader reader,
        MaterialNeeds needs,
        Assumptions assumptions
    ) =>
        [
            .. input
                .Items(fewest, MixAnswers.MostIngredients)
                .Select(i => Quantity(i, reader, needs, assumptions)),
        ];

    private static Known Quantity(
        Input input,
        IngredientReader reader,
        MaterialNeeds needs,
        Assumptions assumptions
    )
    {
        var fields = input.Fields(Measured);
        if (fields["mass_kg"] is { } mass)
        {
            if (fields["amount"] is not null)
            {
                throw input.Problem(
                    "\"mass_kg\" and \"amount\" were both given; one of the two is allowed"
                );
            }

            var known = Typical(reader.Describe(fields, needs, Kilogram), needs, assumptions);
            return known with { Balance = known.Balance * mass.Number(0, 1e9) };
        }

        if (fields["amount"] is null)
        {
            throw input.Problem("\"mass_kg\" or \"amount\" is missing; one of the two is needed");
        }

        var measured = reader.Read(fields, needs);
        var one = Typical(measured, needs, assumptions);
        if (!measured.Amount.IsExact)
        {
            assumptions.Say("mixtures.typical_of_ranges", measured.Name);
        }

        return one with
        {
            Balance = one.Balance * measured.Amount.Typical,
        };
    }

    private static Known OneKilogram(
        Input input,
        IngredientReader reader,
        MaterialNeeds needs,
        Assumptions assumptions
    ) =>
        Typical(
            reader.Describe(input.Fields(IngredientReader.MaterialFields), needs, Kilogram),
            needs,
            assumptions
        );

    // The id of a material stands for an object that names no more than that.
    private static Known OfLibrary(Input id, IngredientReader reader, Assumptions assumptions) =>
        Typical(
            reader.Describe(
                new InputFields(id, new(StringComparer.Ordinal) { ["material"] = id }),
                MaterialNeeds.Balance,
                Kilogram
            ),
            MaterialNeeds.Balance,
            assumptions
        );

    // For moisture alone carbon and nitrogen need not be known; any value does, since it is not used.
    private static Known Typical(
        Ingredient ingredient,
        MaterialNeeds needs,
        Assumptions assumptions
    )
    {
        if (!new MixtureQuestion { Ingredients = [ingredient] }.IsExact)
        {
            if (ingredient.Material is { } material)
            {
                assumptions.Say("mixtures.typical_used", ingredient.Name, material.Name);
            }
            else
            {
                assumptions.Say("mixtures.typical_of_ranges", ingredient.Name);
            }
        }

        var drawn = needs.HasFlag(MaterialNeeds.CarbonAndNitrogen)
            ? ingredient
            : ingredient with
            {
                Properties = ingredient
                    .Properties.With(Core.Materials.MaterialProperty.Carbon, Spread.Exact(40))
                    .With(Core.Materials.MaterialProperty.Nitrogen, Spread.Exact(1)),
                Ratio = null,
            };
        return new Known(
            ingredient,
            IngredientSample.Draw(drawn, new QuasiRandomSet(1, 1)).Typical
        );
    }

    // Nothing has no moisture and no ratio, so no target can be asked of it.
    private static MassBalance Something(Input place, ImmutableArray<Known> parts)
    {
        var sum = default(MassBalance);
        foreach (var part in parts)
        {
            sum += part.Balance;
        }

        return sum.WetMass > 0
            ? sum
            : throw place.Problem("every amount is 0; at least one above 0 is needed");
    }

    private readonly record struct Known(Ingredient? Ingredient, MassBalance Balance);
}
