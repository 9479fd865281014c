using System.Collections.Immutable;
using Heapwright.App.Library;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;
using Heapwright.Core.Reasons;
using Heapwright.Core.Recipes;

namespace Heapwright.App.Contract;

/// <summary>Reads the question of <c>recipe</c>.</summary>
internal static class RecipeReader
{
    /// <summary>The most things that may be listed under <c>have</c> and <c>can_buy</c> together.</summary>
    public const int MostItems = 40;

    /// <summary>Where a purchase has no limit: more than any heap takes.</summary>
    private const double NoLimit = 1_000_000;

    /// <summary>Reads a question.</summary>
    /// <param name="reader">Reads the materials.</param>
    /// <param name="fields">The fields of the question, opened.</param>
    /// <param name="assumptions">Takes what is assumed.</param>
    /// <param name="seed">The seed where the question names none.</param>
    /// <param name="leftOut">What is listed but should never go into a heap: it is no part of the question.</param>
    /// <exception cref="InputProblem">The question is wrong.</exception>
    public static RecipeQuestion Read(
        InputFields fields,
        IngredientReader reader,
        Assumptions assumptions,
        ulong? seed,
        out ImmutableArray<Reason> leftOut
    )
    {
        var have = fields["have"]?.Items(0, MostItems) ?? [];
        var buy = fields["can_buy"]?.Items(0, MostItems) ?? [];
        if (have.Count + buy.Count is 0 or > MostItems)
        {
            throw fields.Owner.Problem(
                $"\"have\" and \"can_buy\" list {have.Count + buy.Count} materials; 1 to {MostItems} are allowed"
            );
        }

        RecipeItem[] items =
        [
            .. have.Select(h => Have(h, reader)),
            .. buy.Select(c => Purchase(c, reader, assumptions)),
        ];
        if (items.FirstOrDefault(i => IsNever(i) && i.MustUse) is { } never)
        {
            throw fields.Owner.Problem(
                $"{never.Ingredient.Name} must be used, but should never go into a heap; leave it out"
            );
        }

        if (items.All(IsNever))
        {
            throw fields.Owner.Problem(
                "nothing that is listed may go into a heap; list something else"
            );
        }

        var bin = fields["bin"] is { } b ? BinReader.Read(b) : null;
        var (least, most) = Volume(fields["volume_m3"]);
        var question = new RecipeQuestion
        {
            Parameters = EarlierReader
                .Read(fields[EarlierReader.Field], assumptions)
                .In(ParameterReader.Table),
            Items = [.. items.Where(i => !IsNever(i))],
            Bin = bin,
            LeastVolume = least,
            MostVolume = most,
            AirTemperature = fields["weather"]?.Fields("air_c")["air_c"]?.Number(-40, 50) ?? 15,
            Aim = Aim(fields["aim"]),
            Chance = fields["chance"]?.Number(0.01, 1) ?? RecipeQuestion.UsualChance,
            Bands = ReadBands(fields["bands"]),
            MixingVolumeFactor = fields["mixing_volume_factor"]?.Spread(0.3, 1.5),
            Onto = fields["onto"] is { } onto ? Standing(onto, reader) : null,
            Seed = fields["seed"] is { } own ? (ulong)own.Whole(0, int.MaxValue) : seed ?? 1,
        };
        if (fields["weather"]?.Fields("air_c")["air_c"] is null)
        {
            assumptions.Say(
                "recipes.air_assumed",
                UnitsNet.Temperature.FromDegreesCelsius(question.AirTemperature)
            );
        }

        leftOut =
        [
            .. items
                .Where(IsNever)
                .Select(i => Reason.Of("recipes.never_left_out", i.Ingredient.Name)),
        ];
        return question;
    }

    private static bool IsNever(RecipeItem item) => item.Ingredient.Material?.Advice == "never";

    /// <summary>The word for an aim.</summary>
    public static string AimWord(RecipeAim aim) =>
        aim switch
        {
            RecipeAim.UseMost => "use_most",
            RecipeAim.LeastCost => "least_cost",
            RecipeAim.AllThroughHeat => "all_through_heat",
            _ => "least_work",
        };

    private static RecipeAim Aim(Input? input) =>
        input?.Choice("use_most", "least_cost", "all_through_heat", "least_work") switch
        {
            "least_cost" => RecipeAim.LeastCost,
            "all_through_heat" => RecipeAim.AllThroughHeat,
            "least_work" => RecipeAim.LeastWork,
            _ => RecipeAim.UseMost,
        };

    private static RecipeItem Have(Input input, IngredientReader reader)
    {
        var fields = input.Fields([
            .. IngredientReader.MaterialFields,
            "amount",
            "whole_units",
            "must_use",
            "spoils_in_days",
        ]);
        var ingredient = reader.Read(fields, MaterialNeeds.Balance | MaterialNeeds.Volume);
        return new RecipeItem
        {
            Ingredient = ingredient,
            Whole = fields["whole_units"]?.YesNo() ?? ingredient.Unit.WholeByDefault,
            MustUse = fields["must_use"]?.YesNo() ?? false,
            SpoilsInDays =
                fields["spoils_in_days"]?.Number(0, 10_000) ?? ingredient.Material?.SpoilsInDays,
        };
    }

    private static RecipeItem Purchase(
        Input input,
        IngredientReader reader,
        Assumptions assumptions
    )
    {
        var fields = input.Fields([
            .. IngredientReader.MaterialFields,
            "unit",
            "price",
            "limit",
            "whole_units",
        ]);
        var unit = ContainerReader.Unit(fields.Needed("unit"), reader.Containers);
        var ingredient = reader.Describe(
            fields,
            MaterialNeeds.Balance | MaterialNeeds.Volume,
            unit
        ) with
        {
            Amount = Spread.Exact(fields["limit"]?.Number(0, NoLimit) ?? NoLimit),
        };
        if (fields["price"] is null)
        {
            assumptions.Say("recipes.free", ingredient.Name);
        }

        return new RecipeItem
        {
            Ingredient = ingredient,
            Whole = fields["whole_units"]?.YesNo() ?? unit.WholeByDefault,
            IsPurchase = true,
            Price = fields["price"]?.Number(0, 1_000_000) ?? 0,
        };
    }

    private static (double? Least, double? Most) Volume(Input? input)
    {
        if (input is not { } given)
        {
            return (null, null);
        }

        var fields = given.Fields("low", "high");
        var low = fields["low"]?.Number(0, 10_000);
        var high = fields["high"]?.Number(0.001, 10_000);
        if (low is null && high is null)
        {
            throw given.Problem("neither \"low\" nor \"high\" is given; at least one is needed");
        }

        if (low > high)
        {
            throw given.Problem($"low is above high; low must not exceed high");
        }

        return (low * 1000, high * 1000);
    }

    private static Bands ReadBands(Input? input)
    {
        if (input is not { } given)
        {
            return Bands.Usual;
        }

        var fields = given.Fields("carbon_nitrogen_ratio", "moisture_pct_wb", "free_air_space_pct");
        return new Bands(
            Read("carbon_nitrogen_ratio", 0, 5000, Bands.Usual.CarbonNitrogen),
            Read("moisture_pct_wb", 0, 99.9, Bands.Usual.Moisture),
            Read("free_air_space_pct", 0, 100, Bands.Usual.Air)
        );

        Band? Read(string name, double lowest, double highest, Band? usual)
        {
            if (fields.IsNull(name))
            {
                return null;
            }

            if (fields[name] is not { } band)
            {
                return usual;
            }

            var ends = band.Fields("low", "high");
            var low = ends["low"]?.Number(lowest, highest);
            var high = ends["high"]?.Number(lowest, highest);
            if (low > high)
            {
                throw band.Problem("low is above high; low must not exceed high");
            }

            return low is null && high is null ? null : new Band(low, high, IsCondition: true);
        }
    }

    private static StandingHeap Standing(Input input, IngredientReader reader)
    {
        var fields = input.Fields("volume_m3", "age_days", "core_c", "ingredients");
        var listed = fields.Needed("ingredients");
        ImmutableArray<Ingredient> ingredients =
        [
            .. listed
                .Items(1, MixAnswers.MostIngredients)
                .Select(i => reader.Read(i, MaterialNeeds.Balance | MaterialNeeds.Volume)),
        ];
        if (!ingredients.Any(i => i.Amount.Typical > 0))
        {
            throw listed.Problem("every amount is 0; at least one above 0 is needed");
        }

        return new StandingHeap(
            fields.Needed("volume_m3").Number(0.001, 10_000) * 1000,
            fields["age_days"]?.Number(0, 3650) ?? 0,
            fields["core_c"]?.Number(-40, 100),
            ingredients
        );
    }
}
