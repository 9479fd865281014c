using System.Globalization;
using Heapwright.Core.Amounts;
using Heapwright.Core.Materials;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Contract;

/// <summary>
/// Reads the materials of a question: from the library, in the asker's own words, or by their properties alone. What
/// is given overrides the library; of carbon, nitrogen and their ratio two fix the third.
/// </summary>
internal sealed class IngredientReader
{
    /// <summary>The fields that describe a material, in every question.</summary>
    public static readonly string[] MaterialFields =
    [
        "material",
        "name",
        "carbon_pct_db",
        "nitrogen_pct_db",
        "carbon_nitrogen_ratio",
        "moisture_pct_wb",
        "bulk_density_kg_m3",
        "ash_pct_db",
        "lignin_pct_db",
    ];

    private static readonly MaterialProperty[] Given =
    [
        MaterialProperty.Carbon,
        MaterialProperty.Nitrogen,
        MaterialProperty.Moisture,
        MaterialProperty.BulkDensity,
        MaterialProperty.Ash,
        MaterialProperty.Lignin,
    ];

    private readonly MaterialLibrary library;
    private readonly Assumptions assumptions;

    public IngredientReader(
        MaterialLibrary library,
        ContainerSet containers,
        Assumptions assumptions
    )
    {
        this.library = library;
        this.assumptions = assumptions;
        Containers = containers;
    }

    /// <summary>The containers of the question.</summary>
    public ContainerSet Containers { get; }

    /// <summary>Whether ash, lignin and stiffness are used, so that what is assumed of them must be said.</summary>
    public bool SaysMake { get; init; } = true;

    /// <summary>An ingredient with its amount: the fields of a material and <c>amount</c>.</summary>
    /// <param name="input">The object.</param>
    /// <param name="needs">What must be known of it.</param>
    public Ingredient Read(Input input, MaterialNeeds needs) =>
        Read(input.Fields([.. MaterialFields, "amount"]), needs);

    /// <summary>An ingredient from fields already opened; <c>amount</c> must be among them.</summary>
    public Ingredient Read(InputFields fields, MaterialNeeds needs)
    {
        var amount = fields.Needed("amount").Fields("value", "unit");
        var unit = ContainerReader.Unit(amount.Needed("unit"), Containers);
        return Describe(fields, needs, unit) with
        {
            Amount = amount.Needed("value").Spread(0, 1_000_000),
        };
    }

    /// <summary>A material from fields already opened, measured in a unit.</summary>
    public Ingredient Describe(InputFields fields, MaterialNeeds needs, UnitSize unit)
    {
        var given = MaterialProperties.None;
        foreach (var property in Given)
        {
            if (fields[PropertyFacts.FieldName(property)] is { } value)
            {
                var (lowest, highest) = PropertyFacts.Allowed(property);
                given = given.With(property, value.Spread(lowest, highest));
            }
        }

        var ratio = fields["carbon_nitrogen_ratio"]?.Spread(0.1, 5000);
        var (material, name) = Named(fields, given, ratio, needs, unit);
        var all = material is null ? given : given.FilledFrom(Known(material, given, ratio));
        var ingredient = new Ingredient
        {
            Name = name,
            IsUnnamed = material is null && fields["name"] is null,
            Material = material,
            Properties = all,
            Amount = Spread.Exact(0),
            Unit = unit,
        };
        ingredient = Settle(fields, ingredient, given, ratio);
        Require(fields, ingredient, needs);
        Say(ingredient, needs);
        return ingredient;
    }

    // Where the asker gave all that weighs, and gave it exactly, the rest is taken at its typical value, so that the
    // answer is as exact as the question.
    private static MaterialProperties Known(
        Material material,
        MaterialProperties given,
        Spread? ratio
    )
    {
        var both =
            (given[MaterialProperty.Carbon] is null ? 0 : 1)
            + (given[MaterialProperty.Nitrogen] is null ? 0 : 1);
        var exact =
            both + (ratio is null ? 0 : 1) >= 2
            && given[MaterialProperty.Moisture] is not null
            && (ratio?.IsExact ?? true)
            && Given.All(p => given[p]?.IsExact ?? true);
        if (!exact)
        {
            return material.Properties;
        }

        var typical = MaterialProperties.None;
        foreach (var property in PropertyFacts.All)
        {
            if (material.Properties[property] is { } value)
            {
                typical = typical.With(property, Spread.Exact(value.Typical));
            }
        }

        return typical;
    }

    /// <summary>The material of an id.</summary>
    /// <param name="id">The field that names it.</param>
    /// <param name="library">The library.</param>
    /// <exception cref="InputProblem">The library has none.</exception>
    internal static Material OfLibrary(Input id, MaterialLibrary library) =>
        library.Find(id.Text())
        ?? throw id.Problem(
            $"\"{id.Text()}\" is no material of the library; the nearest is \"{Nearest.Of(id.Text(), [.. library.All.Select(m => m.Id)])}\" (see: heapwright materials search)"
        );

    private (Material? Material, string Name) Named(
        InputFields fields,
        MaterialProperties given,
        Spread? ratio,
        MaterialNeeds needs,
        UnitSize unit
    )
    {
        var words = fields["name"]?.Text();
        if (fields["material"] is { } id)
        {
            var material = OfLibrary(id, library);
            return (material, words ?? material.Name);
        }

        if (words is null)
        {
            return (null, "unnamed material " + fields.Owner.Place);
        }

        var match = MaterialSearch.CloseMatch(library, words);
        if (match is not null)
        {
            assumptions.Say("mixtures.taken_for", words, match.Name, match.Id);
        }
        else if (!IsKnown(given, ratio, needs, unit))
        {
            throw fields.Owner.Problem(
                $"\"{words}\" is close to no material of the library, and {AreMissing([.. Missing(given, ratio, needs, unit)])}, or find the material with: heapwright materials search"
            );
        }

        return (match, words);
    }

    private static Ingredient Settle(
        InputFields fields,
        Ingredient ingredient,
        MaterialProperties given,
        Spread? ratio
    )
    {
        if (ratio is not { } r)
        {
            return ingredient;
        }

        var place = fields["carbon_nitrogen_ratio"]!;
        if (given[MaterialProperty.Nitrogen] is { } n)
        {
            if (given[MaterialProperty.Carbon] is { } c)
            {
                if (n.Typical <= 0 || Math.Abs((c.Typical / n.Typical / r.Typical) - 1) > 0.01)
                {
                    throw place.Problem(
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"{r.Typical} contradicts carbon {c.Typical} over nitrogen {n.Typical} by more than 1 %; leave one of the three out"
                        )
                    );
                }

                // All three agree: carbon and nitrogen carry the answer.
                return ingredient;
            }

            var carbon = n.Typical * r.Typical;
            if (carbon > PropertyFacts.HighestCarbon)
            {
                throw place.Problem(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{r.Typical} times nitrogen {n.Typical} would be {carbon:0.#} % carbon; plant and animal matter holds at most {PropertyFacts.HighestCarbon} %"
                    )
                );
            }

            return ingredient with
            {
                Ratio = r,
                RatioFixesCarbon = true,
            };
        }

        return ingredient with
        {
            Ratio = r,
        };
    }

    private static void Require(InputFields fields, Ingredient ingredient, MaterialNeeds needs)
    {
        var missing = Missing(ingredient.Properties, ingredient.Ratio, needs, ingredient.Unit)
            .ToList();
        if (missing.Count > 0)
        {
            throw fields.Owner.Problem($"{AreMissing(missing)}, or name a material of the library");
        }

        RequireRoom(fields, ingredient);
        if (
            ingredient.Properties[MaterialProperty.Carbon] is { } carbon
            && ingredient.Properties[MaterialProperty.Ash] is { } ash
            && carbon.Typical + ash.Typical > 100
        )
        {
            throw fields.Owner.Problem(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"carbon {carbon.Typical} and ash {ash.Typical} % of dry mass add up to more than 100"
                )
            );
        }
    }

    // Carbon and nitrogen are parts of the same dry matter; a ratio together with one of them can ask for more than all.
    private static void RequireRoom(InputFields fields, Ingredient ingredient)
    {
        var carbon = ingredient.Properties[MaterialProperty.Carbon]?.Typical;
        var nitrogen = ingredient.Properties[MaterialProperty.Nitrogen]?.Typical;
        if (ingredient.Ratio is { } ratio)
        {
            if (ingredient.RatioFixesCarbon)
            {
                carbon = nitrogen * ratio.Typical;
            }
            else
            {
                nitrogen = carbon / ratio.Typical;
            }
        }

        var (_, mostNitrogen) = PropertyFacts.Allowed(MaterialProperty.Nitrogen);
        if (nitrogen > mostNitrogen)
        {
            throw fields.Owner.Problem(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"carbon {carbon:0.###} over the ratio {ingredient.Ratio?.Typical:0.###} would be {nitrogen:0.#} % nitrogen; at most {mostNitrogen} % is allowed"
                )
            );
        }

        if (carbon + nitrogen > 100)
        {
            throw fields.Owner.Problem(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"carbon {carbon:0.###} and nitrogen {nitrogen:0.###} % of dry mass add up to more than 100"
                )
            );
        }
    }

    private static string AreMissing(IReadOnlyList<string> missing) =>
        missing.Count == 1
            ? $"{missing[0]} is missing; give it"
            : $"{string.Join(", ", missing.SkipLast(1))} and {missing[^1]} are missing; give them";

    private static bool IsKnown(
        MaterialProperties properties,
        Spread? ratio,
        MaterialNeeds needs,
        UnitSize unit
    ) => !Missing(properties, ratio, needs, unit).Any();

    private static IEnumerable<string> Missing(
        MaterialProperties properties,
        Spread? ratio,
        MaterialNeeds needs,
        UnitSize unit
    )
    {
        var carbon = properties[MaterialProperty.Carbon] is not null;
        var nitrogen = properties[MaterialProperty.Nitrogen] is not null;
        if (needs.HasFlag(MaterialNeeds.CarbonAndNitrogen))
        {
            if (!carbon && !(ratio is not null && nitrogen))
            {
                yield return "carbon_pct_db";
            }

            if (!nitrogen && !(ratio is not null && carbon))
            {
                yield return "nitrogen_pct_db";
            }
        }

        if (needs.HasFlag(MaterialNeeds.Moisture) && properties[MaterialProperty.Moisture] is null)
        {
            yield return "moisture_pct_wb";
        }

        var volume = !unit.IsMass || needs.HasFlag(MaterialNeeds.Volume);
        if (volume && properties[MaterialProperty.BulkDensity] is null)
        {
            yield return "bulk_density_kg_m3";
        }
    }

    private void Say(Ingredient ingredient, MaterialNeeds needs)
    {
        if (!ingredient.Unit.IsMass || ingredient.Unit.IsAssumed)
        {
            assumptions.Size(ingredient.Unit);
        }

        if (
            !SaysMake
            || !needs.HasFlag(MaterialNeeds.CarbonAndNitrogen)
            || ingredient.Material is not null
        )
        {
            return;
        }

        if (ingredient.Properties[MaterialProperty.Ash] is null)
        {
            assumptions.Say("mixtures.ash_assumed", ingredient.Name);
        }

        if (ingredient.Properties[MaterialProperty.Lignin] is null)
        {
            assumptions.Say(
                "mixtures.lignin_assumed",
                ingredient.Name,
                MixtureAssumptions.Value(MaterialProperty.Lignin)
            );
        }

        assumptions.Say(
            "mixtures.make_assumed",
            ingredient.Name,
            MixtureAssumptions.Value(MaterialProperty.StiffShare),
            MixtureAssumptions.Value(MaterialProperty.UnsupportedVolume)
        );
    }
}
