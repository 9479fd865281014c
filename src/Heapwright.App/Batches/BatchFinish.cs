using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
using Heapwright.Core.FinishedCompost;
using Heapwright.Core.Forecasts;
using Heapwright.Core.Quantities;
using NodaTime;

namespace Heapwright.App.Batches;

/// <summary>How far a batch has come and where it may go: <c>finish</c>, asked with all that its diary knows.</summary>
public static class BatchFinish
{
    /// <summary>Asks; null for a heap that is not built yet.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="now">The present.</param>
    /// <param name="more">What is asked besides, such as <c>beds</c>, in the fields of <c>finish</c>; null for nothing.</param>
    /// <param name="forecast">The forecast of the heap as it is now; null where there is none.</param>
    /// <exception cref="InputProblem">What is asked besides is wrong, or the diary holds what no heap can have.</exception>
    public static Answer? Of(
        BatchRecord batch,
        Instant now,
        JsonObject? more = null,
        ForecastAnswer? forecast = null
    )
    {
        ArgumentNullException.ThrowIfNull(batch);
        if (DoneQuestion.Of(batch.Record, now) is not { } question)
        {
            return null;
        }

        question["rules_met"] = new JsonArray([
            .. batch
                .Verdicts.Where(r => r["verdict"]!.GetValue<string>() == "met")
                .Select(r => r["rule"]!.DeepClone()),
        ]);
        if (forecast is not null)
        {
            question["fast_matter_left_pct"] = Json.Of(Over(forecast, r => r.FastPercent));
        }

        foreach (var (field, value) in more ?? [])
        {
            question[field] = value?.DeepClone();
        }

        return FinishAnswers.Answer(
            Input.Of(question, batch.Record.Kept.Name),
            measures: batch.Measures,
            built: batch.Record.Heap(),
            simulated: forecast is null
                ? null
                : MatterGiven.None with
                {
                    DryMass = Over(forecast, r => r.DryKilograms),
                    Moisture = Over(forecast, r => r.MoisturePercent),
                    Volume = Over(forecast, r => r.Litres),
                }
        );
    }

    private static Spread Over(ForecastAnswer forecast, Func<HeapRest, double> of) =>
        Spread.OfSample([.. forecast.Outcome.Select(o => of(o.Now))]);
}
