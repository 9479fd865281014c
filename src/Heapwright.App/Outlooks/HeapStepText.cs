using System.Collections.Immutable;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
using Heapwright.App.Texts;

namespace Heapwright.App.Outlooks;

/// <summary>The next step of a heap in words, always in one form: a verb and a time, then what it rests on.</summary>
public static class HeapStepText
{
    /// <summary>The verb and the time, in one sentence.</summary>
    /// <param name="step">The step.</param>
    /// <param name="measures">The measures.</param>
    public static string Headline(HeapStep step, Measures measures)
    {
        ArgumentNullException.ThrowIfNull(step);
        ArgumentNullException.ThrowIfNull(measures);
        return step.Kind switch
        {
            HeapStepKind.KeepAway or HeapStepKind.LetHeatOut => Words.Of("outlooks." + step.Alarm),
            HeapStepKind.Read => Words.Of(
                step.LastReading is null ? "outlooks.read_first" : "outlooks.read"
            ),
            HeapStepKind.ReadTest => Words.Of(
                "outlooks.read_test",
                null,
                Words.Of("diary.test_" + EntryWords.Of(step.Test!.Value))
            ),
            HeapStepKind.Thinking => Words.Of("outlooks.thinking"),
            HeapStepKind.SayHelped => Words.Of("outlooks.say_helped"),
            HeapStepKind.CheckDone => Words.Of("outlooks.check_done"),
            _ => ForecastText.Headline(step.Forecast!.Step, step.Day, measures),
        };
    }

    /// <summary>What it rests on, in sentences.</summary>
    /// <param name="step">The step.</param>
    /// <param name="measures">The measures.</param>
    public static ImmutableArray<string> Why(HeapStep step, Measures measures)
    {
        ArgumentNullException.ThrowIfNull(step);
        ArgumentNullException.ThrowIfNull(measures);
        return step.Kind switch
        {
            HeapStepKind.KeepAway or HeapStepKind.LetHeatOut => [WhyUrgent(step, measures)],
            HeapStepKind.Read =>
            [
                Words.Count(
                    step.LastReading is null ? "outlooks.read_first_why" : "outlooks.read_why",
                    step.DaysUnread
                ),
            ],
            HeapStepKind.ReadTest =>
            [
                Words.Of("outlooks.read_test_why", measures.Culture, Day(step)),
            ],
            HeapStepKind.Thinking => [Words.Of("outlooks.thinking_why")],
            HeapStepKind.SayHelped => [Words.Of("outlooks.say_helped_why")],
            HeapStepKind.CheckDone =>
            [
                Words.Of("outlooks.check_done_why", measures.Culture, step.Day),
            ],
            _ => [.. OfForecast(step, measures)],
        };
    }

    private static string WhyUrgent(HeapStep step, Measures measures) =>
        step is { Kind: HeapStepKind.LetHeatOut, LastReading: { } last }
            ? Words.Of(
                "outlooks.too_hot_why",
                null,
                measures.Temperature(last.Temperature),
                measures.Celsius(HeapAlarms.TooHotCelsius)
            )
            : Words.Of($"outlooks.{step.Alarm}_why");

    private static string Day(HeapStep step) => Words.Day(step.TestFrom!.Value);

    private static IEnumerable<string> OfForecast(HeapStep step, Measures measures)
    {
        var forecast = step.Forecast!;
        foreach (var reason in forecast.Stale)
        {
            yield return Words.Of("forecast.stale_" + ForecastAnswers.Snake(reason));
        }

        if (ForecastText.Normal(forecast.Latest, measures) is { } normal)
        {
            yield return normal;
        }

        if (!forecast.Step.IsWaiting && double.IsFinite(forecast.ChanceBetter))
        {
            yield return Words.Of("outlooks.chance", measures.Culture, 100 * forecast.ChanceBetter);
        }
    }
}
