using System.Collections.Immutable;
using System.Text;
using Heapwright.App.Library;
using Heapwright.App.Texts;
using Heapwright.Core.Amounts;
using Heapwright.Core.Forecasts;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Contract;

/// <summary>The answer to <c>forecast</c> in words: what to do, why, and how sure that is.</summary>
public static class ForecastText
{
    private const int Others = 4;

    /// <summary>What to do next, as a verb and a time.</summary>
    /// <param name="step">The step.</param>
    /// <param name="today">The present, days since building.</param>
    /// <param name="measures">The measures.</param>
    public static string Headline(AdvisedStep step, double today, Measures measures)
    {
        ArgumentNullException.ThrowIfNull(step);
        ArgumentNullException.ThrowIfNull(measures);
        var when = Math.Round(step.OnDay - today) switch
        {
            <= 0 => Words.Of("forecast.today"),
            1 => Words.Of("forecast.tomorrow"),
            var n => Words.Of("forecast.in_days", measures.Culture, n),
        };
        return step switch
        {
            { Deed: "turn", Litres: > 0 } => Words.Of(
                "forecast.do_turn_water",
                measures.Culture,
                when,
                measures.Water(step.Litres)
            ),
            { Deed: "water" } => Words.Of(
                "forecast.do_water",
                measures.Culture,
                when,
                measures.Water(step.Litres)
            ),
            { Amount: { } amount } => Words.Of(
                "forecast.do_" + step.Deed,
                measures.Culture,
                when,
                Number(amount, UnitWords.Named(step.Unit!), measures),
                UnitWords.Name(amount, UnitWords.Named(step.Unit!)),
                step.Material!
            ),
            { Cover: { } cover } => Words.Of("forecast.do_cover_" + cover, measures.Culture, when),
            _ => Words.Of("forecast.do_" + step.Deed, measures.Culture, when),
        };
    }

    private static string Number(double amount, UnitSize unit, Measures measures) =>
        unit.WholeByDefault
            ? UnitWords.Number(amount, unit, measures.Culture)
            : Figures.One(amount, measures.Culture);

    /// <summary>Whether the latest reading is usual for this heap, in a sentence; null without readings.</summary>
    /// <param name="latest">The latest reading held against what was expected of it; null without readings.</param>
    /// <param name="measures">The measures.</param>
    public static string? Normal(ExpectedReading? latest, Measures measures)
    {
        ArgumentNullException.ThrowIfNull(measures);
        return latest is null
            ? null
            : Words.Of(
                latest.IsInside ? "forecast.normal"
                    : latest.Celsius > latest.Expected.High ? "forecast.hotter"
                    : "forecast.colder",
                measures.Culture,
                measures.Celsius(latest.Celsius),
                measures.CelsiusRange(latest.Expected)
            );
    }

    internal static string Of(MadeForecast made)
    {
        var text = new StringBuilder();
        text.AppendLine(made.Headline);
        text.Append("  ").AppendLine(made.Why);
        foreach (var reason in made.Stale)
        {
            text.AppendLine(reason);
        }

        text.AppendLine();
        if (made.Normal is { } normal)
        {
            text.AppendLine(normal);
        }

        Course(text, made.Forecast, made.Measures);
        foreach (var sentence in made.Learned.AddRange(made.Milestones))
        {
            text.AppendLine(sentence);
        }

        text.AppendLine().AppendLine(Words.Of("forecast.others"));
        foreach (var (what, why) in made.Others.Take(Others))
        {
            text.Append("  - ").AppendLine(what);
            text.Append("    ").AppendLine(why);
        }

        text.AppendLine().AppendLine(Words.Of("simulate.honesty"));
        Figures.AppendList(text, Words.Of("quantities.assumed"), made.Assumptions);
        MaterialCautions.Append(text, made.Cautions);
        return text.ToString();
    }

    /// <summary>What is likely when, in sentences.</summary>
    /// <param name="forecast">The forecast.</param>
    /// <param name="measures">The measures.</param>
    internal static ImmutableArray<string> Milestones(ForecastAnswer forecast, Measures measures)
    {
        var said = ImmutableArray.CreateBuilder<string>();
        Say("forecast.reaches", forecast.Reaches55);
        Say("forecast.leaves", forecast.Leaves55);
        Say("forecast.done", [.. forecast.Outcome.Select(o => o.DoneDay)]);
        var held = MilestoneRange.Of([.. forecast.Outcome.Select(o => o.ShareHeldPercent)]);
        said.Add(
            Words.Of(
                "forecast.held",
                measures.Culture,
                held.Typical!,
                held.Low!,
                held.High!,
                measures.Celsius(55)
            )
        );
        return said.ToImmutable();

        void Say(string code, double[] days)
        {
            var range = MilestoneRange.Of(days);
            if (range.Typical is { } typical)
            {
                said.Add(
                    Words.Of(
                        code,
                        measures.Culture,
                        typical,
                        100 * range.ShareReaching,
                        measures.Celsius(55)
                    )
                );
            }
        }
    }

    // The core day by day: the middle and where nine cases in ten lie.
    private static void Course(StringBuilder text, ForecastAnswer forecast, Measures measures)
    {
        text.AppendLine().AppendLine(Words.Of("forecast.course", null, measures.TemperatureUnit));
        var last = -1.0;
        for (var t = 0; t < forecast.Days.Length; t++)
        {
            var day = forecast.Days[t];
            if (last >= 0 && day - last < 1 - 1e-9 && t < forecast.Days.Length - 1)
            {
                continue;
            }

            last = day;
            var row = forecast.Core[t];
            var range = Spread.Of(
                ForecastAnswers.Share(row, 0.05),
                ForecastAnswers.Share(row, 0.5),
                ForecastAnswers.Share(row, 0.95)
            );
            text.AppendLine(
                Words.Of("forecast.course_day", measures.Culture, day, measures.CelsiusRange(range))
            );
        }

        text.AppendLine();
    }
}
