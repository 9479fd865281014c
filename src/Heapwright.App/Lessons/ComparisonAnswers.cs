using Heapwright.App.Contract;
using Heapwright.App.Texts;
using Heapwright.Core.Lessons;

namespace Heapwright.App.Lessons;

/// <summary>Answers whether the difference between two heaps is more than chance.</summary>
public static class ComparisonAnswers
{
    /// <summary>Compares.</summary>
    /// <param name="input">The question; see <see cref="TaughtQuestion"/>.</param>
    /// <param name="limits">How much may be asked.</param>
    /// <param name="measures">The measures of its sentences.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="InputProblem">The question is wrong.</exception>
    public static ComparedHeaps Make(
        Input input,
        SimulateLimits limits,
        Measures measures,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(limits);
        ArgumentNullException.ThrowIfNull(measures);
        var assumptions = new Assumptions(measures);
        var asked = ComparisonReader.Read(input, limits, assumptions);
        var question = asked.Question;
        return new ComparedHeaps
        {
            Comparison = HeapComparer.Compare(question, cancellation),
            Differences = HeapDifferences.Of(
                question.Heap.Heap,
                question.Other?.Heap ?? question.Changed
            ),
            Decides = asked.Decides,
            Without = asked.Without,
            Measures = measures,
            Assumptions = [.. assumptions.All],
            Cautions = MaterialCautions.Of(
                asked
                    .Readers.SelectMany(r => r.Ingredients)
                    .Where(i => i.Amount.High > 0)
                    .Select(i => i.Material),
                "legionella_dust",
                "computed_heat"
            ),
        };
    }
}
