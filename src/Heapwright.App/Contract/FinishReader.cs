using System.Collections.Immutable;
using Heapwright.App.Library;
using Heapwright.Core.FinishedCompost;
using Heapwright.Core.Heaps;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;
using Heapwright.Core.Readings;

namespace Heapwright.App.Contract;

/// <summary>Reads the question of <c>finish</c>; everything in it may be missing.</summary>
/// <param name="assumptions">Takes what was assumed.</param>
/// <param name="built">The heap as it was built, where the question has no <c>ingredients</c>; null where it is not known.</param>
internal sealed partial class FinishReader(Assumptions assumptions, Heap? built)
{
    private const double MostDays = 3660;

    private static readonly string[] Rules =
    [
        "us_503_pfrp_windrow",
        "us_503_pfrp_static",
        "us_organic_windrow",
        "us_organic_static",
        "us_produce_turned",
        "us_produce_static",
    ];

    private readonly FinishTestReader tests = new(assumptions);
    private Spread? askedDepth;

    /// <summary>Now and the day of building.</summary>
    public FinishDates Dates { get; private set; } = new(null, IsDate: true);

    /// <summary>What went in.</summary>
    public ImmutableArray<Ingredient> Ingredients { get; private set; } = [];

    /// <summary>The containers of the question.</summary>
    public Core.Amounts.ContainerSet Containers { get; private set; } = UsualContainers.Set;

    /// <summary>Whether ash, or what it follows from, was given on one side only, and on which.</summary>
    public (bool Before, bool After) Ash { get; private set; }

    /// <summary>Reads a question.</summary>
    /// <param name="input">The question.</param>
    /// <param name="seed">The seed where the question names none.</param>
    /// <exception cref="InputProblem">The question is wrong.</exception>
    public FinishQuestion Read(Input input, ulong? seed)
    {
        var top = input.Fields([
            "self_heating",
            "seed_test",
            "bean_test",
            "bag_test",
            "reheat",
            "uses",
            "smell",
            "see",
            "seed",
            "visitors",
            "signs",
            "ash",
            "ash_before_pct_db",
            "ash_after_pct_db",
            "start",
            "end",
            "compost",
            "lab",
            "ingredients",
            "water_l",
            "mixing_volume_factor",
            "sieve",
            "first_year_nitrogen_pct",
            "age_days",
            "cured_days",
            "built",
            "today",
            "date",
            "core_c",
            "air_c",
            "ambient_c",
            "fast_matter_left_pct",
            "manure",
            "shown_hot",
            "rules_met",
            "herbicide_risk",
            "beds",
            "apply",
            "containers",
            .. Meters.Select(m => m.Field),
            "carbon_nitrogen_ratio",
            "name",
            "schema",
        ]);
        top["schema"]?.Whole(Json.Schema, Json.Schema);
        top["name"]?.Text(80);
        var number = top["seed"] is { } own ? (ulong)own.Whole(0, int.MaxValue) : seed ?? 1;
        Containers = ContainerReader.Read(top["containers"]);
        var measured = new Dictionary<string, Spread>(StringComparer.Ordinal);
        var seeds = top["seed_test"] is { } sown ? tests.Seeds(sown, measured) : null;
        var recipe = Recipe(top, number);
        var (manure, shownHot) = Manure(top);
        var lab = top["lab"]?.Fields([.. MatterReader.Contents, .. Meters.Select(m => m.Field)]);
        ReadMeters(top, lab, measured);
        var (start, end) = Matter(top, lab);
        if (end.Ratio is { } ratio)
        {
            measured["carbon_nitrogen_ratio"] = ratio;
        }
        else if (end is { Carbon: { } c, Nitrogen: { } n })
        {
            measured["carbon_nitrogen_ratio"] = Quotient(c, n);
        }

        Ash = (start.Ash is not null || recipe is not null, end.Ash is not null);
        var age = Age(top);
        if (top["cured_days"]?.Spread(0, MostDays) is { } cured)
        {
            measured["cured_days"] = cured;
        }

        if (top["reheat"] is { } again && tests.Reheat(again) is { } rise)
        {
            measured["reheat_rise_c"] = rise;
        }

        if (top["bag_test"] is { } bag && FinishTestReader.Bag(bag) is { } kept)
        {
            measured["bag_test"] = kept;
        }

        return new FinishQuestion
        {
            SelfHeating = top["self_heating"] is { } flask
                ? tests.SelfHeating(flask, top["ambient_c"])
                : null,
            Seeds = seeds,
            Pots = top["bean_test"] is { } pots ? tests.Pots(pots) : null,
            Measured = measured.ToImmutableSortedDictionary(StringComparer.Ordinal),
            Signs = Signs(top),
            AgeDays = age,
            AboveAir = AboveAir(top),
            FastMatterLeft = top["fast_matter_left_pct"]?.Spread(0, 100),
            Manure = manure,
            ShownHot = shownHot,
            HerbicideRisk = top["herbicide_risk"]?.YesNo() ?? Caution("herbicide_residue"),
            Start = start,
            End = end,
            Recipe = recipe,
            Beds = Beds(top),
            AskedDepth = askedDepth,
            Uses = Uses(top["uses"]),
            Seed = number,
        };
    }

    private Mixture? Recipe(InputFields top, ulong seed)
    {
        if (top["ingredients"] is not { } list)
        {
            if (built is not null)
            {
                Ingredients = [.. built.Ingredients];
                return Blend(built.WaterLitres, null, seed);
            }

            foreach (var field in (string[])["water_l", "mixing_volume_factor"])
            {
                if (top[field] is { } alone)
                {
                    throw alone.Problem("belongs to \"ingredients\", which are missing");
                }
            }

            return null;
        }

        var reader = new IngredientReader(LibraryReader.Library, Containers, assumptions);
        Ingredients =
        [
            .. list.Items(1, MixAnswers.MostIngredients)
                .Select(i => reader.Read(i, MaterialNeeds.Balance)),
        ];
        if (!Ingredients.Any(i => i.Amount.Low > 0))
        {
            throw list.Problem("every amount may be 0; at least one above 0 is needed");
        }

        return Blend(
            top["water_l"]?.Spread(0, 1_000_000) ?? Spread.Exact(0),
            top["mixing_volume_factor"]?.Spread(0.3, 1.5),
            seed
        );
    }

    private Mixture Blend(Spread water, Spread? mixing, ulong seed)
    {
        var question = new MixtureQuestion
        {
            Ingredients = Ingredients,
            Water = water,
            MixingVolumeFactor = mixing,
            PointCount = SamplePoints.Count,
            Seed = seed,
        };
        MixAnswers.SayMixing(question, assumptions);
        return Mixture.Of(question);
    }

    private (bool? Manure, bool ShownHot) Manure(InputFields top)
    {
        bool? manure = null;
        var hot = false;
        if (top["manure"] is { IsObject: true } said)
        {
            var fields = said.Fields("in_it", "shown_hot");
            manure = fields["in_it"]?.YesNo() ?? true;
            hot = fields["shown_hot"]?.YesNo() ?? false;
        }
        else
        {
            manure = top["manure"]?.YesNo();
        }

        hot |= top["shown_hot"]?.YesNo() ?? false;
        string[] known = [.. HygieneRuleReader.Rules.Select(r => r.Id)];
        foreach (var rule in top["rules_met"]?.Items(0, known.Length) ?? [])
        {
            hot |= Rules.Contains(rule.Choice(known), StringComparer.Ordinal);
        }

        return (manure ?? Caution("raw_manure"), hot);
    }

    // What is known of the materials says so; without a list of them nobody knows.
    private bool? Caution(string code) =>
        Ingredients.IsEmpty ? null
        : Ingredients.Any(i => i.Material?.Cautions.Contains(code) == true) ? true
        : Ingredients.All(i => i.Material is not null) ? false
        : null;

    private Spread? Age(InputFields top)
    {
        MatterReader.One(top, "today", "date");
        if ((top["today"] ?? top["date"]) is { } today)
        {
            var (time, isDate) = FinishDates.Read(today);
            Dates = new FinishDates(time, isDate);
        }

        var age = top["age_days"]?.Spread(0, MostDays);
        if (top["built"] is not { } built)
        {
            return age;
        }

        var (start, builtIsDate) = FinishDates.Read(built);
        if (Dates.Today is { } now)
        {
            var days = (now - start).TotalDays;
            if (days is < 0 or > MostDays)
            {
                throw built.Problem(
                    FormattableString.Invariant(
                        $"is {days:0.#} days before \"today\"; 0 to {MostDays} is allowed"
                    )
                );
            }

            if (age is { } given && (days < given.Low - 1 || days > given.High + 1))
            {
                throw top["age_days"]!.Problem(
                    FormattableString.Invariant(
                        $"{given.Typical} is not the {days:0.#} days from \"built\" to \"today\"; write two of the three"
                    )
                );
            }

            return age ?? Spread.Exact(days);
        }

        if (age is { } old)
        {
            Dates = new FinishDates(start.AddDays(old.Typical), builtIsDate);
        }

        return age;
    }

    private static Spread? AboveAir(InputFields top)
    {
        var core = top["core_c"]?.Spread(-40, 110);
        var air = top["air_c"]?.Spread(-40, 60);
        return core is { } c && air is { } a
            ? Spread.Of(
                Math.Max(0, c.Low - a.High),
                Math.Max(0, c.Typical - a.Typical),
                Math.Max(0, c.High - a.Low)
            )
            : null;
    }

    private static ImmutableArray<(string, string)> Signs(InputFields top)
    {
        var signs = new List<(string, string)>();
        var told = top["signs"]?.Fields("smell", "see", "visitors");
        foreach (
            var (field, known) in ((string Field, ImmutableArray<string> Known)[])
                [
                    ("smell", SignWords.Smell),
                    ("see", SignWords.See),
                    ("visitors", SignWords.Visitors),
                ]
        )
        {
            if (top[field] is { } twice && told?[field] is not null)
            {
                throw twice.Problem("stands in \"signs\" too; write it once");
            }

            if ((top[field] ?? told?[field]) is { } words)
            {
                signs.AddRange(FinishTestReader.Words(words, known).Select(word => (field, word)));
            }
        }

        return [.. signs];
    }

    private ImmutableArray<Bed> Beds(InputFields top)
    {
        var reader = new FinishBedReader(assumptions);
        var beds = reader.Read(top["beds"]);
        if (top["apply"] is { } apply && reader.Apply(apply, out var depth) is var bed)
        {
            askedDepth = depth;
            beds = bed is null ? beds : [.. beds, bed];
        }

        return beds;
    }

    private static ImmutableArray<CompostUse> Uses(Input? list) =>
        list is null
            ? [.. Enum.GetValues<CompostUse>()]
            :
            [
                .. FinishTestReader
                    .Words(list, [.. FinishTableReader.UseWords])
                    .Select(FinishTableReader.Use),
            ];
}
