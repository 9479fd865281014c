using Heapwright.App.Contract;
using Heapwright.App.Texts;
using Heapwright.Core.Lessons;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Lessons;

/// <summary>The words for figures, ranges and verdicts of looks back.</summary>
internal static class LessonWords
{
    /// <summary>The figures, as in answers.</summary>
    public static IReadOnlyList<string> Figures { get; } =
    ["days_at_or_above_55_c", "peak_c", "first_55_c_day", "below_40_c_day"];

    /// <summary>The figure of a word.</summary>
    /// <param name="word">One of <see cref="Figures"/>.</param>
    public static HeapFigure Figure(string word) =>
        word switch
        {
            "peak_c" => HeapFigure.Peak,
            "first_55_c_day" => HeapFigure.First55,
            "below_40_c_day" => HeapFigure.Below40,
            _ => HeapFigure.DaysAt55,
        };

    /// <summary>The word for a figure.</summary>
    /// <param name="figure">The figure.</param>
    public static string Of(HeapFigure figure) => Figures.First(w => Figure(w) == figure);

    /// <summary>The word for what is held against the prediction.</summary>
    /// <param name="subject">What.</param>
    public static string Of(LessonSubject subject) =>
        subject switch
        {
            LessonSubject.Peak => "peak_c",
            LessonSubject.First55 => "first_55_c_day",
            LessonSubject.DaysAt55 => "days_at_or_above_55_c",
            LessonSubject.Below40 => "below_40_c_day",
            LessonSubject.Moisture => "moisture_pct_wb",
            _ => "yield_l",
        };

    /// <summary>The word for a verdict.</summary>
    /// <param name="verdict">The verdict.</param>
    public static string Of(LessonVerdict verdict) =>
        verdict switch
        {
            LessonVerdict.Inside => "inside",
            LessonVerdict.CannotTell => "cannot_tell",
            _ => "outside",
        };

    /// <summary>The word for a verdict.</summary>
    /// <param name="verdict">The verdict.</param>
    public static string Of(ComparisonVerdict verdict) =>
        verdict switch
        {
            ComparisonVerdict.MoreThanChance => "more_than_chance",
            ComparisonVerdict.NothingChanged => "nothing_changed",
            _ => "cannot_tell",
        };

    /// <summary>The word for a kind of difference.</summary>
    /// <param name="kind">The kind.</param>
    public static string Of(DifferenceKind kind) => kind.ToString().ToLowerInvariant();

    /// <summary>What a figure is called.</summary>
    /// <param name="word">Its word in answers.</param>
    /// <param name="measures">The measures.</param>
    public static string Name(string word, Measures measures) =>
        Words.Of("lessons.name_" + word, null, measures.Celsius(55), measures.Celsius(40));

    /// <summary>A value of a figure.</summary>
    /// <param name="word">Its word in answers.</param>
    /// <param name="value">The value.</param>
    /// <param name="measures">The measures.</param>
    public static string Value(string word, double value, Measures measures) =>
        !double.IsFinite(value)
            ? Words.Of("lessons.never")
            : word switch
            {
                "peak_c" => measures.CelsiusAsRead(value),
                "moisture_pct_wb" => Words.Of("lessons.percent", measures.Culture, value),
                "yield_l" => measures.Litres(value),
                "days_at_or_above_55_c" => Words.Of("lessons.days", measures.Culture, value),
                _ => Words.Of("lessons.day", measures.Culture, value),
            };

    /// <summary>A range of a figure.</summary>
    /// <param name="word">Its word in answers.</param>
    /// <param name="range">The range.</param>
    /// <param name="measures">The measures.</param>
    public static string Range(string word, FigureRange range, Measures measures) =>
        !double.IsFinite(range.Low) ? Words.Of("lessons.never")
        : !double.IsFinite(range.High)
            ? Words.Of("lessons.or_never", null, Value(word, range.Low, measures))
        : Words.Of(
            "lessons.range",
            null,
            Value(word, range.Low, measures),
            Value(word, range.High, measures)
        );

    /// <summary>A range of a figure.</summary>
    /// <param name="word">Its word in answers.</param>
    /// <param name="range">The range.</param>
    /// <param name="measures">The measures.</param>
    public static string Range(string word, Spread range, Measures measures) =>
        Range(word, new FigureRange(range.Low, range.Typical, range.High, 1), measures);

    /// <summary>A difference of a figure, with its sign.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="value">The difference.</param>
    /// <param name="measures">The measures.</param>
    public static string Difference(HeapFigure figure, double value, Measures measures)
    {
        var isHeat = figure == HeapFigure.Peak;
        var shown = isHeat && measures.InFahrenheit ? 1.8 * value : value;
        // What is rounded away has no sign.
        shown = Math.Abs(shown) < 0.05 ? 0 : shown;
        return Words.Of(
            isHeat ? "lessons.difference_heat" : "lessons.difference_days",
            measures.Culture,
            shown,
            measures.TemperatureUnit.Trim()
        );
    }

    /// <summary>What was learned of a parameter, in a sentence with its ranges.</summary>
    /// <param name="fitted">The parameter.</param>
    /// <param name="measures">The measures.</param>
    public static string Learned(Core.Forecasts.FittedParameter fitted, Measures measures)
    {
        var name = ParameterNames.Of(fitted.Parameter);
        var way = fitted.Score.Mean > 0 ? "more" : "less";
        var sentence =
            Words.TryOf($"forecast.{name}_{way}")
            ?? Words.TryOf($"lessons.{name}_{way}")
            ?? Words.Of("lessons.parameter_" + way, null, name);
        double Percent(double value) => 100 * value / fitted.Before.Typical;
        return Words.Of(
            "lessons.learned",
            measures.Culture,
            sentence,
            Percent(fitted.After.Typical),
            Percent(fitted.After.Low),
            Percent(fitted.After.High),
            Percent(fitted.Before.Low),
            Percent(fitted.Before.High)
        );
    }
}
