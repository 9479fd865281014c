using Heapwright.App.Contract;
using Heapwright.Core.Forecasts;

namespace Heapwright.App.Lessons;

/// <summary>Reads a heap that is looked back on: a question of <c>forecast</c> of which only the past counts.</summary>
internal static class PastReader
{
    // What is said of the future when a forecast is asked has no place in a look back.
    private static readonly string[] OfTheFuture =
    [
        "forecast.stock_assumed",
        "forecast.aim_assumed",
        "forecast.followed",
    ];

    /// <summary>Reads it.</summary>
    /// <param name="input">The heap.</param>
    /// <param name="limits">How much may be asked.</param>
    /// <param name="assumptions">Takes what is assumed of the heap.</param>
    /// <exception cref="InputProblem">The question is wrong.</exception>
    public static (ForecastQuestion Question, ForecastReader Reader) Read(
        Input input,
        SimulateLimits limits,
        Assumptions assumptions
    )
    {
        var said = new Assumptions(assumptions.Measures);
        var reader = new ForecastReader(limits, said);
        var question = reader.Read(input, null);
        MixAnswers.SayMixing(question.Heap.Mixture, said);
        foreach (var sentence in said.All.Except(Future(question, assumptions)))
        {
            assumptions.Add(sentence);
        }

        return (question, reader);
    }

    private static IEnumerable<string> Future(ForecastQuestion question, Assumptions assumptions)
    {
        var said = new Assumptions(assumptions.Measures);
        foreach (var code in OfTheFuture)
        {
            said.Say(code, question.FromDay + question.DecisionDays);
        }

        return said.All;
    }
}
