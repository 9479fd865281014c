using System.Collections.Immutable;
using Heapwright.App.Diary;
using Heapwright.App.Library;
using Heapwright.App.Texts;
using Heapwright.Core.Advice;
using Heapwright.Core.Amounts;
using Heapwright.Core.Forecasts;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;
using Heapwright.Core.Readings;
using UnitsNet;

namespace Heapwright.App.Contract;

/// <summary>
/// Reads the question of <c>forecast</c>: a heap as in <c>simulate</c>, its readings and signs, the present, and what the
/// person wants of it.
/// </summary>
internal sealed class ForecastReader(SimulateLimits limits, Assumptions assumptions)
{
    /// <summary>The most readings in one question.</summary>
    public const int MostReadings = 10_000;

    private const int LeastMembers = 200;
    private const int MostMembers = 500;
    private const double UsualAhead = 10; // d
    private const double DecisionDays = 21;

    private static readonly string[] Also =
    [
        "readings",
        "signs",
        "from_day",
        "ahead_days",
        "decide_by",
        "stock",
    ];

    private static readonly Dictionary<string, AdviceAim> Aims = new(StringComparer.Ordinal)
    {
        ["safe_heat"] = AdviceAim.SafeHeat,
        ["fast"] = AdviceAim.Fast,
        ["keep_nitrogen"] = AdviceAim.KeepNitrogen,
        ["least_work"] = AdviceAim.LeastWork,
    };

    // Percent of wet mass that a handful stands for: common practice, no source; wide, for hands differ.
    private static readonly Dictionary<string, Spread> Squeezes = new(StringComparer.Ordinal)
    {
        ["dust"] = Spread.Of(10, 25, 38),
        ["dry"] = Spread.Of(28, 40, 50),
        ["sponge"] = Spread.Of(46, 56, 65),
        ["drips"] = Spread.Of(56, 65, 73),
        ["streams"] = Spread.Of(63, 73, 83),
    };

    private static readonly string[] OtherSigns = ["feel", "smell", "see", "visitors"];

    /// <summary>What could be added.</summary>
    public ImmutableArray<StockStuff> Stock { get; private set; } = [];

    /// <summary>What counts.</summary>
    public AdviceAim Aim { get; private set; }

    /// <summary>The word for it.</summary>
    public string AimWord => Aims.First(a => a.Value == Aim).Key;

    /// <summary>Everything that is or may be in the heap.</summary>
    public ImmutableArray<Ingredient> Ingredients { get; private set; } = [];

    /// <summary>Reads a question.</summary>
    /// <param name="input">The question.</param>
    /// <param name="seed">The seed where the question names none.</param>
    /// <exception cref="InputProblem">The question is wrong.</exception>
    public ForecastQuestion Read(Input input, ulong? seed)
    {
        var top = SimulateReader.Open(input, Also);
        var readings = Readings(top["readings"]);
        var moisture = Signs(top["signs"]);
        var from =
            top["from_day"]?.Number(0, SimulateLimits.MostDays)
            ?? Math.Max(
                readings.Select(r => r.Day).DefaultIfEmpty(0).Max(),
                moisture.Select(m => m.Day).DefaultIfEmpty(0).Max()
            );
        if (top["from_day"] is null)
        {
            assumptions.Say("forecast.from_assumed", from);
        }

        var ahead = top["ahead_days"]?.Number(0.25, 60) ?? UsualAhead;
        var members = top["members"]?.Whole(1, Math.Min(limits.MostMembers, MostMembers));
        if (members < LeastMembers)
        {
            assumptions.Say("forecast.members_raised", LeastMembers);
        }

        var decision = top["days"] is { } days
            ? Math.Clamp(days.Number(0.25, SimulateLimits.MostDays) - from, ahead, 60)
            : Math.Max(DecisionDays, ahead);
        var simulate = new SimulateReader(limits, assumptions);
        var heap = simulate.Read(
            input,
            top,
            seed,
            Math.Max(from + decision, 1),
            Math.Max(members ?? LeastMembers, LeastMembers)
        );
        if (top["days"] is null)
        {
            assumptions.Say("forecast.followed", from + decision);
        }

        var late = readings.Count(r => r.Day > from);
        if (late > 0)
        {
            assumptions.Say("forecast.readings_late" + Languages.End(late), late, from);
        }

        SayDepths(readings, from);
        Aim = top["decide_by"] is { } aim ? Aims[aim.Choice([.. Aims.Keys])] : AdviceAim.SafeHeat;
        if (top["decide_by"] is null)
        {
            assumptions.Say("forecast.aim_assumed");
        }

        Stock = ReadStock(top["stock"], simulate.Reader);
        Ingredients = [.. simulate.Ingredients, .. Stock.Select(s => s.Ingredient)];
        return new ForecastQuestion
        {
            Heap = heap,
            Readings = readings,
            Moisture = moisture,
            FromDay = from,
            AheadDays = ahead,
            DecisionDays = decision,
            Knowledge = EarlierReader.Read(top[EarlierReader.Field], assumptions),
        };
    }

    private static ImmutableArray<ProbeReading> Readings(Input? list) =>
        list is null ? [] : [.. list.Items(0, MostReadings).Select(Reading)];

    private static ProbeReading Reading(Input input)
    {
        var fields = input.Fields("day", "temperature_c", "depth_cm", "spot");
        return new ProbeReading(
            fields.Needed("day").Number(0, SimulateLimits.MostDays),
            Temperature.FromDegreesCelsius(fields.Needed("temperature_c").Number(-40, 100)),
            fields["spot"]?.Choice("core", "side", "top", "base") switch
            {
                "side" => ProbeSpot.Side,
                "top" => ProbeSpot.Top,
                "base" => ProbeSpot.Base,
                _ => ProbeSpot.Core,
            },
            fields["depth_cm"] is { } depth ? Length.FromCentimeters(depth.Number(1, 300)) : null
        );
    }

    private ImmutableArray<MoistureSign> Signs(Input? list)
    {
        if (list is null)
        {
            return [];
        }

        var signs = ImmutableArray.CreateBuilder<MoistureSign>();
        foreach (var input in list.Items(0, MostReadings))
        {
            var fields = input.Fields(["day", "squeeze", "note", .. OtherSigns]);
            var day = fields.Needed("day").Number(0, SimulateLimits.MostDays);
            if (fields["squeeze"] is { } squeeze)
            {
                // The middle of the heap stands for the whole; its skin and its base do not.
                var places = squeeze.IsText ? null : squeeze.Fields("core", "outside", "base");
                places?["outside"]?.Choice([.. Squeezes.Keys]);
                places?["base"]?.Choice([.. Squeezes.Keys]);
                var word = places is null ? squeeze : places["core"];
                if (word is not null)
                {
                    signs.Add(new MoistureSign(day, Squeezes[word.Choice([.. Squeezes.Keys])]));
                }
            }

            fields["note"]?.Text(2000);
            Words(fields["smell"], SignWords.Smell);
            Words(fields["see"], SignWords.See);
            Words(fields["visitors"], SignWords.Visitors);
            if (fields["feel"]?.Fields("core", "outside") is { } feel)
            {
                feel["core"]?.Choice([.. SignWords.Feel]);
                feel["outside"]?.Choice([.. SignWords.Feel]);
            }

            if (OtherSigns.Any(s => fields[s] is not null))
            {
                assumptions.Say("forecast.signs_unused");
            }
        }

        return signs.ToImmutable();
    }

    // What is not used is still to be of the words that are known.
    private static void Words(Input? list, ImmutableArray<string> known)
    {
        foreach (var word in list?.Items(0, known.Length) ?? [])
        {
            word.Choice([.. known]);
        }
    }

    private ImmutableArray<StockStuff> ReadStock(Input? list, IngredientReader reader)
    {
        if (list is not null)
        {
            return
            [
                .. list.Items(0, MixAnswers.MostIngredients)
                    .Select(i => reader.Read(i, MaterialNeeds.Balance | MaterialNeeds.Volume))
                    .Select(i => new StockStuff(i, IsGreen(i))),
            ];
        }

        assumptions.Say("forecast.stock_assumed");
        return
        [
            Usual("leaves_mixed_shredded", 120, isGreen: false),
            Usual("grass_clippings_fresh", 60, isGreen: true),
        ];
    }

    private static StockStuff Usual(string material, double litres, bool isGreen)
    {
        var known = LibraryReader.Library.Find(material)!;
        return new StockStuff(
            new Ingredient
            {
                Name = known.Name,
                Material = known,
                Properties = known.Properties,
                Amount = Spread.Exact(litres),
                Unit = UnitSize.OfVolume("l", Spread.Exact(1), false),
            },
            isGreen
        );
    }

    // By what the library counts it as; by its nitrogen where it is not of the library.
    private static bool IsGreen(Ingredient ingredient) =>
        ingredient.Material is { CountsAs: "green" or "brown" } known
            ? known.CountsAs == "green"
            : ingredient.Properties[Core.Materials.MaterialProperty.Carbon]!.Value.Typical
                < 30
                    * ingredient.Properties[Core.Materials.MaterialProperty.Nitrogen]!
                        .Value
                        .Typical;

    private void SayDepths(ImmutableArray<ProbeReading> readings, double from)
    {
        foreach (
            var spot in readings
                .Where(r => r.Day <= from && r.Depth is null && r.Spot != ProbeSpot.Core)
                .Select(r => r.Spot)
                .Distinct()
                .Order()
        )
        {
            assumptions.Say(
                "forecast.depth_assumed",
                EntryText.Word(EntryWords.Of(spot)),
                assumptions.Measures.Short(Length.FromMeters(ProbeDepths.Usual(spot)!.Value))
            );
        }
    }
}
