using System.Collections.Immutable;
using Heapwright.App.Library;
using Heapwright.Core.Bins;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;
using Heapwright.Core.Simulation;
using Barrier = Heapwright.Core.Simulation.Barrier;

namespace Heapwright.App.Contract;

/// <summary>
/// Reads the question of <c>simulate</c>: ingredients as in <c>mix</c>, a plan of <c>recipe</c>, or a whole answer of
/// <c>recipe</c>; the bin, the weather and what is done to the heap.
/// </summary>
internal sealed class SimulateReader(SimulateLimits limits, Assumptions assumptions)
{
    /// <summary>How long a heap is followed where nothing is said.</summary>
    public const double UsualDays = 60;

    /// <summary>The members where nothing is said.</summary>
    public const int UsualMembers = 200;

    private static readonly string[] Asked =
    [
        "bin",
        "ingredients",
        "plan",
        "plans",
        "number",
        "water_l",
        "start",
        "start_c",
        "weather",
        "cover",
        "walls",
        "events",
        "days",
        "members",
        "seed",
        "containers",
        "mixing_volume_factor",
        EarlierReader.Field,
        "name",
        "schema",
    ];

    /// <summary>The units of the question, additions included.</summary>
    public ImmutableArray<Ingredient> Ingredients { get; private set; } = [];

    /// <summary>Reads ingredients, with the containers of the question.</summary>
    public IngredientReader Reader { get; private set; } = null!;

    /// <summary>Reads a question of <c>simulate</c>.</summary>
    /// <param name="input">The question.</param>
    /// <param name="seed">The seed where the question names none.</param>
    /// <exception cref="InputProblem">The question is wrong.</exception>
    public SimulationQuestion Read(Input input, ulong? seed)
    {
        var top = Open(input, []);
        var question = Read(
            input,
            top,
            seed,
            top["days"]?.Number(0.25, SimulateLimits.MostDays) ?? UsualDays,
            top["members"]?.Whole(1, limits.MostMembers) ?? UsualMembers
        );
        if (top["days"] is null)
        {
            assumptions.Say("simulate.days_assumed", question.Days);
        }

        if (question.Members == 1)
        {
            assumptions.Say("simulate.one_member");
        }
        else if (top["members"] is null)
        {
            assumptions.Say("simulate.members_assumed", question.Members);
        }

        var knowledge = EarlierReader.Read(top[EarlierReader.Field], assumptions);
        return question with { Parameters = knowledge.In(question.Parameters) };
    }

    /// <summary>Opens a question that has the fields of <c>simulate</c> and others.</summary>
    /// <param name="input">The question.</param>
    /// <param name="also">The other fields.</param>
    /// <exception cref="InputProblem">A field is not known.</exception>
    public static InputFields Open(Input input, string[] also) =>
        input.Has("plans")
            ? input.Fields([
                .. Asked,
                .. also.Except(PlanReader.AnsweredByRecipe, StringComparer.Ordinal),
                "volume_m3",
                .. PlanReader.AnsweredByPlan,
                .. PlanReader.AnsweredByRecipe.Except(Asked, StringComparer.Ordinal),
            ])
            : input.Fields([.. Asked, .. also]);

    /// <summary>Reads the heap of a question that is opened.</summary>
    /// <param name="input">The question.</param>
    /// <param name="top">Its fields.</param>
    /// <param name="seed">The seed where the question names none.</param>
    /// <param name="days">How long the heap is followed.</param>
    /// <param name="members">In how many members.</param>
    /// <exception cref="InputProblem">The question is wrong.</exception>
    public SimulationQuestion Read(
        Input input,
        InputFields top,
        ulong? seed,
        double days,
        int members
    )
    {
        top["schema"]?.Whole(Json.Schema, Json.Schema);
        top["name"]?.Text(80);
        var place = PlanReader.Beside(top, "bin") ?? top.Needed("bin");
        var bin = BinReader.Read(place);
        var reader = Reader = new IngredientReader(
            LibraryReader.Library,
            ContainerReader.Read(PlanReader.Beside(top, "containers")),
            assumptions
        );
        var mixture = ReadMixture(top, reader, seed);
        if (members * days > limits.MostMemberDays)
        {
            throw (top["members"] ?? top["days"] ?? input).Problem(
                string.Create(
                    System.Globalization.CultureInfo.InvariantCulture,
                    $"{members} members times {days} days is {members * days:0}; at most {limits.MostMemberDays} is allowed, so ask for fewer of one of the two"
                )
            );
        }

        var weather = new SimulateWeather(limits, assumptions).Read(
            top["weather"],
            top["start"],
            days
        );
        var events = new SimulateEvents(reader, assumptions).Read(top["events"], days);
        Ingredients =
        [
            .. mixture.Ingredients,
            .. events.OfType<Added>().SelectMany(e => e.Ingredients),
        ];
        var question = new SimulationQuestion
        {
            Bin = bin,
            Mixture = mixture,
            Parameters = ParameterReader.Table,
            Weather = weather,
            Walls = Surroundings.Walls[Word(top["walls"], Surroundings.Walls, "slatted")],
            Cover = Surroundings.Covers[Word(top["cover"], Surroundings.Covers, "breathable")],
            StartCelsius = top["start_c"]?.Number(-10, 70),
            Events = events,
            Days = days,
            Members = members,
            Seed = mixture.Seed,
        };
        RequireHeap(place, top["events"], question);
        SayDefaults(top, question);
        return question;
    }

    // Stuff spread over a wide floor is a carpet: it has nothing to say of heat, and its thin layers take hours to follow.
    private static void RequireHeap(Input place, Input? events, SimulationQuestion question)
    {
        var mixture = Mixture.Of(question.Mixture);
        var volume = HeapSimulation.LooseBuiltVolume(mixture, question.Parameters);
        foreach (
            var bin in question.Events.OfType<Moved>().Select(m => m.Bin).Prepend(question.Bin)
        )
        {
            var height = bin?.HeightFor(UnitsNet.Volume.FromCubicMeters(volume)).Meters;
            if (height < Bin.LowestHeap)
            {
                throw (ReferenceEquals(bin, question.Bin) ? place : events!).Problem(
                    string.Create(
                        System.Globalization.CultureInfo.InvariantCulture,
                        $"{1000 * volume:g3} l would lie {100 * height:g3} cm high in it; at least {100 * Bin.LowestHeap} cm make a heap, so give a smaller bin or more to put in"
                    )
                );
            }
        }
    }

    private static MixtureQuestion ReadMixture(
        InputFields top,
        IngredientReader reader,
        ulong? seed
    )
    {
        var fromPlan = top["plan"] is not null || top["plans"] is not null;
        var plan = fromPlan ? PlanReader.PlanOf(top) : top;
        ImmutableArray<Ingredient> ingredients = fromPlan
            ? [.. PlanReader.Entries(plan).Select(e => PlanReader.Entry(reader, e))]
            : ReadIngredients(top.Needed("ingredients"), reader);
        if (!ingredients.Any(i => i.Amount.Typical > 0))
        {
            throw (fromPlan ? plan.Owner : top.Needed("ingredients")).Problem(
                "every amount is 0; at least one above 0 is needed"
            );
        }

        return new MixtureQuestion
        {
            Ingredients = ingredients,
            Water = (top["water_l"] ?? plan["water_l"])?.Spread(0, 1_000_000) ?? Spread.Exact(0),
            MixingVolumeFactor = (
                top["mixing_volume_factor"] ?? plan["mixing_volume_factor"]
            )?.Spread(0.3, 1.5),
            Seed = top["seed"] is { } own ? (ulong)own.Whole(0, int.MaxValue) : seed ?? 1,
        };
    }

    /// <summary>A list of ingredients whose volume is known.</summary>
    /// <param name="list">The list.</param>
    /// <param name="reader">Reads the materials.</param>
    internal static ImmutableArray<Ingredient> ReadIngredients(
        Input list,
        IngredientReader reader
    ) =>
        [
            .. list.Items(1, MixAnswers.MostIngredients)
                .Select(i => reader.Read(i, MaterialNeeds.Balance | MaterialNeeds.Volume)),
        ];

    private static string Word(
        Input? input,
        IReadOnlyDictionary<string, Barrier> known,
        string usual
    ) => input?.Choice([.. known.Keys]) ?? usual;

    private void SayDefaults(InputFields top, SimulationQuestion question)
    {
        if (top["walls"] is null)
        {
            assumptions.Say("simulate.walls_assumed");
        }

        if (top["cover"] is null)
        {
            assumptions.Say("simulate.cover_assumed");
        }

        if (top["start_c"] is null)
        {
            assumptions.Say(
                "simulate.start_assumed",
                assumptions.Measures.Celsius(question.Weather.StartAir)
            );
        }
    }
}
