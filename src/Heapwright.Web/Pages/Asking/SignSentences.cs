using System.Globalization;
using Heapwright.App.Texts;
using Heapwright.Core.Diagnosis;
using Heapwright.Web.Showing;

namespace Heapwright.Web.Pages.Asking;

/// <summary>Questions, answers and chances of the conversation about signs, in words.</summary>
public static class SignSentences
{
    private const string Age = "heap.age_days";

    /// <summary>A question.</summary>
    /// <param name="question">The question.</param>
    public static string Question(SignQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        return Words.TryOf("signs.ask_" + question.Code)
            ?? Words.Of("signs.ask_" + Key(question.Field));
    }

    /// <summary>The question that a step answers.</summary>
    /// <param name="step">The step.</param>
    public static string Asked(SignStep step)
    {
        var code = SignsAsk.CodeOf(step);
        return code == SignsAsk.Worry
            ? Words.Of("signs.ask_worry")
            : Question(SignsAsk.Find(code)!);
    }

    /// <summary>An answer, as it stands on its button.</summary>
    /// <param name="step">The answer.</param>
    /// <param name="show">How quantities are shown.</param>
    public static string Answer(SignStep step, Shown show)
    {
        ArgumentNullException.ThrowIfNull(step);
        ArgumentNullException.ThrowIfNull(show);
        return step.Field switch
        {
            SignStep.Unknown => Words.Of("signs.dont_know"),
            SignStep.None => None(step.Word),
            SignStep.Reading => double.TryParse(
                step.Word,
                CultureInfo.InvariantCulture,
                out var celsius
            )
                ? show.Temperature(celsius)
                : step.Word,
            Age => Say.TryOf("asking.age_" + step.Word) ?? Say.Of("asking.age", step.Word),
            _ => Words.TryOf($"signs.word_{Key(step.Field)}_{step.Word}") ?? step.Word,
        };
    }

    /// <summary>A chance in words and as a number, never none and never all.</summary>
    /// <param name="chance">The chance.</param>
    public static string Chance(double chance) =>
        Say.Of(
            "asking.chance_and_number",
            Say.Of(
                chance >= 0.9 ? "asking.chance_surely"
                : chance >= 0.7 ? "asking.chance_very_likely"
                : chance >= 0.5 ? "asking.chance_likely"
                : chance >= 0.25 ? "asking.chance_well_possible"
                : chance >= 0.08 ? "asking.chance_possible"
                : "asking.chance_unlikely"
            ),
            Hundredths(chance)
        );

    /// <summary>A chance in whole hundredths, as the contract writes it.</summary>
    /// <param name="chance">The chance.</param>
    public static string Hundredths(double chance) =>
        chance < 0.01 ? "<1"
        : chance > 0.99 ? ">99"
        : (chance * 100).ToString("0", CultureInfo.CurrentCulture);

    private static string None(string code) =>
        SignsAsk.Find(code)?.Field switch
        {
            "signs.smell" => Words.Of("signs.word_signs_smell_none"),
            "weather.lately" => Words.Of("signs.word_weather_lately_normal"),
            _ => Say.Of("asking.none"),
        };

    private static string Key(string field) => field.Replace('.', '_');
}
