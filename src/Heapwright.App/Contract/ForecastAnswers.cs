using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heapwright.App.Library;
using Heapwright.App.Texts;
using Heapwright.Core.Advice;
using Heapwright.Core.Forecasts;
using Heapwright.Core.Quantities;
using Heapwright.Core.Simulation;
using Heapwright.Numerics.Sampling;

namespace Heapwright.App.Contract;

/// <summary>Answers <c>forecast</c>: what a heap will do, whether that is usual for it, and what to do next.</summary>
public static class ForecastAnswers
{
    /// <summary>Days from the present to the second picture of the inside.</summary>
    public const double Soon = 3;

    private const double Moved = 0.7; // standard deviations: from here on something was learned

    /// <summary>The version of the engine, as in <c>made_by</c>.</summary>
    internal static readonly string EngineVersion = typeof(Forecaster)
        .Assembly.GetName()
        .Version!.ToString(3);

    private static readonly (string Field, Func<HeapOutcome, double> Of, bool MayFail)[] Effects =
    [
        ("share_held_72h_at_55_pct", o => o.ShareHeldPercent, false),
        ("first_done_day", o => o.DoneDay, true),
        ("dry_matter_loss_pct", o => o.DryLossPercent, false),
        ("nitrogen_loss_pct", o => o.NitrogenLossPercent, false),
    ];

    /// <summary>Answers a question.</summary>
    /// <param name="input">The question.</param>
    /// <param name="limits">How much may be asked.</param>
    /// <param name="seed">The seed where the question names none.</param>
    /// <param name="measures">The measures of its text; metric if null.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="InputProblem">The question is wrong.</exception>
    public static Answer Answer(
        Input input,
        SimulateLimits limits,
        ulong? seed = null,
        Measures? measures = null,
        CancellationToken cancellation = default
    )
    {
        var made = Make(input, limits, seed, measures, cancellation);
        var json = ToJson(made);
        return new Answer(json, Yes: true, ForecastText.Of(made));
    }

    /// <summary>Forecasts a heap and ranks what might be done, for who shows it in another way.</summary>
    /// <param name="input">The question.</param>
    /// <param name="limits">How much may be asked.</param>
    /// <param name="seed">The seed where the question names none.</param>
    /// <param name="measures">The measures of its sentences; metric if null.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="InputProblem">The question is wrong.</exception>
    public static MadeForecast Make(
        Input input,
        SimulateLimits limits,
        ulong? seed = null,
        Measures? measures = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(limits);
        var assumptions = new Assumptions(measures ?? Measures.Metric);
        var reader = new ForecastReader(limits, assumptions);
        var question = reader.Read(input, seed);
        MixAnswers.SayMixing(question.Heap.Mixture, assumptions);
        var forecast = Forecaster.Run(question, cancellation);
        var advice = Adviser.Advise(forecast, reader.Aim, reader.Stock, cancellation);
        assumptions.Say("forecast.work_estimated");
        return new MadeForecast(
            forecast,
            advice,
            reader.AimWord,
            assumptions.Measures,
            [.. assumptions.All],
            Cautions(forecast, advice, reader),
            ContainerReader.Sizes(reader.Ingredients.Select(i => i.Unit))
        );
    }

    /// <summary>What was learned, in sentences; the plainest first.</summary>
    /// <param name="forecast">The forecast.</param>
    /// <param name="measures">The measures.</param>
    internal static ImmutableArray<string> Learned(ForecastAnswer forecast, Measures measures)
    {
        var said = ImmutableArray.CreateBuilder<string>();
        var (before, after) = forecast.BuiltMoisture;
        var width = (before.High - before.Low) / (2 * NormalDistribution.Z95);
        if (width > 0 && Math.Abs(after.Typical - before.Typical) >= Moved * width)
        {
            said.Add(
                Words.Of(
                    after.Typical > before.Typical ? "forecast.wetter" : "forecast.drier",
                    measures.Culture,
                    after.Typical,
                    before.Typical
                )
            );
        }

        foreach (var fitted in forecast.Fitted)
        {
            var way = fitted.Score.Mean > 0 ? "more" : "less";
            if (
                Math.Abs(fitted.Score.Mean) >= Moved
                && Words.TryOf($"forecast.{ParameterNames.Of(fitted.Parameter)}_{way}")
                    is { } sentence
            )
            {
                said.Add(sentence);
            }
        }

        return said.ToImmutable();
    }

    /// <summary>What a course is called by its share.</summary>
    internal static double Share(double[] members, double share)
    {
        double[] sorted = [.. members];
        Array.Sort(sorted);
        return Percentiles.At(sorted, share);
    }

    private static JsonObject ToJson(MadeForecast made)
    {
        var (forecast, advice, measures) = (made.Forecast, made.Advice, made.Measures);
        return new JsonObject
        {
            ["schema"] = Json.Schema,
            ["seed"] = forecast.Question.Heap.Seed,
            ["members"] = forecast.Question.Heap.Members,
            ["from_day"] = forecast.Question.FromDay,
            ["ahead_days"] = forecast.Question.AheadDays,
            ["readings_used"] = forecast.ReadingsUsed,
            ["forecast"] = new JsonArray([
                .. forecast.Days.Select(
                    (day, t) =>
                        (JsonNode)
                            new JsonObject
                            {
                                ["day"] = day,
                                ["core_c"] = SimulateAnswers.Point(forecast.Core[t]),
                            }
                ),
            ]),
            ["fitted"] = Fitted(forecast),
            ["learned"] = Json.Of(Learned(forecast, measures)),
            ["learned_parameters"] = Scores(forecast),
            ["moisture_now_pct_wb"] = Json.Of(forecast.MoistureNow),
            ["normal_for_this_heap"] = forecast.Latest is { } latest
                ? JsonValue.Create(latest.IsInside)
                : null,
            ["expected_reading"] = forecast.Latest is { } e
                ? new JsonObject
                {
                    ["day"] = e.Day,
                    ["expected_c"] = Json.Of(e.Expected),
                    ["read_c"] = e.Celsius,
                }
                : null,
            ["milestones"] = new JsonObject
            {
                ["reaches_55_c_day"] = MilestoneRange.Of(forecast.Reaches55).ToJson(true),
                ["leaves_55_c_day"] = MilestoneRange.Of(forecast.Leaves55).ToJson(true),
                ["first_done_day"] = MilestoneRange
                    .Of([.. forecast.Outcome.Select(o => o.DoneDay)])
                    .ToJson(true),
                ["fast_matter_left_pct"] = MilestoneRange
                    .Of([.. forecast.Outcome.Select(o => o.Now.FastPercent)])
                    .ToJson(false),
                ["share_held_72h_at_55_pct"] = MilestoneRange
                    .Of([.. forecast.Outcome.Select(o => o.ShareHeldPercent)])
                    .ToJson(false),
            },
            ["decide_by"] = made.Aim,
            ["actions"] = new JsonArray([.. advice.Select(a => (JsonNode)Action(a, measures))]),
            ["doubtful_readings"] = new JsonArray([
                .. forecast.Doubtful.Select(d =>
                    (JsonNode)new JsonObject { ["day"] = d.Day, ["temperature_c"] = d.Celsius }
                ),
            ]),
            ["stale"] = !forecast.Stale.IsEmpty,
            ["stale_why"] = Json.Of(
                forecast.Stale.Select(s => Words.Of("forecast.stale_" + Snake(s)))
            ),
            ["zones"] = ZonesJson.Of(
                forecast,
                [forecast.Question.FromDay, forecast.Question.FromDay + Soon]
            ),
            ["made_by"] = new JsonObject
            {
                ["engine"] = EngineVersion,
                ["data"] = DataFiles.Fingerprint,
            },
            ["containers"] = made.Containers.DeepClone(),
            ["assumptions"] = Json.Of(made.Assumptions),
            ["cautions"] = made.Cautions.DeepClone(),
        };
    }

    internal static string Snake(StaleReason reason) =>
        reason switch
        {
            StaleReason.NoReadings => "no_readings",
            StaleReason.OldReadings => "old_readings",
            _ => "misfit",
        };

    private static JsonArray Fitted(ForecastAnswer forecast)
    {
        var (before, after) = forecast.BuiltMoisture;
        static JsonNode Of(string parameter, Spread before, Spread after) =>
            new JsonObject
            {
                ["parameter"] = parameter,
                ["before"] = Json.Of(before),
                ["after"] = Json.Of(after),
            };
        return
        [
            Of("built_moisture_pct_wb", before, after),
            .. forecast.Fitted.Select(f => Of(ParameterNames.Of(f.Parameter), f.Before, f.After)),
        ];
    }

    private static JsonObject Scores(ForecastAnswer forecast)
    {
        var json = new JsonObject();
        foreach (var (parameter, score) in forecast.Learned.OrderBy(l => l.Key))
        {
            json[ParameterNames.Of(parameter)] = new JsonObject
            {
                ["mean"] = score.Mean,
                ["deviation"] = score.Deviation,
            };
        }

        return json;
    }

    private static JsonObject Action(RankedAction ranked, Measures measures)
    {
        var effects = new JsonObject();
        foreach (var (field, of, mayFail) in Effects)
        {
            effects[field] = MilestoneRange.Of([.. ranked.Outcomes.Select(of)]).ToJson(mayFail);
        }

        effects["labour_minutes"] = ranked.Action.Minutes;
        return new JsonObject
        {
            ["do"] = Deed(ranked.Action.Deed),
            ["on_day"] = ranked.Action.OnDay,
            ["amount"] = Amount(ranked.Action),
            ["material"] = ranked.Action.Stuff?.Name,
            ["with"] = Json.Of(With(ranked.Action)),
            ["kind"] = ranked.Action.Cover,
            ["effects"] = effects,
            ["chance_better_than_waiting"] = ranked.ChanceBetter,
            ["why"] = measures.Say(ranked.Why),
        };
    }

    /// <summary>The word for an action, as in answers.</summary>
    /// <param name="deed">The action.</param>
    internal static string Deed(ActionKind deed) =>
        deed switch
        {
            ActionKind.Wait => "wait",
            ActionKind.Turn => "turn",
            ActionKind.Water => "water",
            ActionKind.AddBrowns => "add_browns",
            ActionKind.AddGreens => "add_greens",
            ActionKind.Cover => "cover",
            ActionKind.StopAdding => "stop_adding",
            _ => "close",
        };

    private static JsonNode? Amount(HeapAction action) =>
        action.Stuff is { } stuff
            ? new JsonObject { ["value"] = stuff.Amount.Typical, ["unit"] = stuff.Unit.Unit }
        : action.Litres > 0 ? new JsonObject { ["value"] = action.Litres, ["unit"] = "l" }
        : null;

    // What belongs to it and is done in one go.
    private static IEnumerable<string> With(HeapAction action)
    {
        if (action.Deed == ActionKind.Turn && action.Litres > 0)
        {
            yield return "water";
        }

        if (action.Stuff is not null)
        {
            yield return "turn";
        }
    }

    private static JsonArray Cautions(
        ForecastAnswer forecast,
        ImmutableArray<RankedAction> advice,
        ForecastReader reader
    )
    {
        var also = new List<string> { "legionella_dust", "computed_heat" };
        if (advice.Any(a => a.Action.Events.OfType<Turned>().Any()))
        {
            also.Add("before_turning");
        }

        if (forecast.Core.Max(row => Share(row, 0.95)) >= SimulateAnswers.Hot)
        {
            also.Add("hot_heap");
        }

        if (forecast.Core.Max(row => Share(row, 0.95)) >= SimulateAnswers.TooHot)
        {
            also.Add("fire_in_heap");
        }

        return MaterialCautions.Of(
            reader.Ingredients.Where(i => i.Amount.High > 0).Select(i => i.Material),
            [.. also]
        );
    }
}
