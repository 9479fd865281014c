using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heapwright.App.Texts;
using Heapwright.Core.Advice;
using Heapwright.Core.Forecasts;

namespace Heapwright.App.Contract;

/// <summary>A forecast with its advice, ready to be shown.</summary>
/// <param name="Forecast">The forecast.</param>
/// <param name="Advice">What might be done, best first.</param>
/// <param name="Aim">The word for what counted.</param>
/// <param name="Measures">The measures of the sentences.</param>
/// <param name="Assumptions">What was assumed.</param>
/// <param name="Cautions">The cautions, as in answers.</param>
/// <param name="Containers">The sizes of the containers, as in answers.</param>
public sealed record MadeForecast(
    ForecastAnswer Forecast,
    ImmutableArray<RankedAction> Advice,
    string Aim,
    Measures Measures,
    ImmutableArray<string> Assumptions,
    JsonArray Cautions,
    JsonObject Containers
)
{
    /// <summary>What to do next, as a verb and a time.</summary>
    public string Headline => HeadlineOf(Advice[0].Action);

    /// <summary>Why, in a sentence.</summary>
    public string Why => Measures.Say(Advice[0].Why);

    /// <summary>Whether the latest reading is usual for this heap, in a sentence; null without readings.</summary>
    public string? Normal => ForecastText.Normal(Forecast.Latest, Measures);

    /// <summary>What was learned of the heap, in sentences.</summary>
    public ImmutableArray<string> Learned => ForecastAnswers.Learned(Forecast, Measures);

    /// <summary>What is likely when, in sentences.</summary>
    public ImmutableArray<string> Milestones => ForecastText.Milestones(Forecast, Measures);

    /// <summary>Why it should not be leant on, in sentences; empty where it may be.</summary>
    public ImmutableArray<string> Stale =>
        [.. Forecast.Stale.Select(s => Words.Of("forecast.stale_" + ForecastAnswers.Snake(s)))];

    /// <summary>The other things that were tried, each with its reason; waiting among them where it is not advised.</summary>
    public ImmutableArray<(string What, string Why)> Others =>
        [.. Advice.Skip(1).Select(a => (HeadlineOf(a.Action), Measures.Say(a.Why)))];

    /// <summary>The zones now and soon, as a field of answers.</summary>
    public JsonObject Zones =>
        ZonesJson.Of(
            Forecast,
            [Forecast.Question.FromDay, Forecast.Question.FromDay + ForecastAnswers.Soon]
        );

    private string HeadlineOf(HeapAction action) =>
        ForecastText.Headline(AdvisedStep.Of(action), Forecast.Question.FromDay, Measures);
}
