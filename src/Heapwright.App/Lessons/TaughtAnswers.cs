using Heapwright.App.Contract;
using Heapwright.App.Texts;
using Heapwright.Core.Lessons;

namespace Heapwright.App.Lessons;

/// <summary>Answers what a heap taught.</summary>
public static class TaughtAnswers
{
    /// <summary>Looks back on a heap.</summary>
    /// <param name="input">The question; see <see cref="TaughtQuestion"/>.</param>
    /// <param name="limits">How much may be asked.</param>
    /// <param name="measures">The measures of its sentences.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="InputProblem">The question is wrong.</exception>
    public static TaughtHeap Make(
        Input input,
        SimulateLimits limits,
        Measures measures,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(limits);
        ArgumentNullException.ThrowIfNull(measures);
        var fields = input.Fields("heap", "yield", "schema");
        var assumptions = new Assumptions(measures);
        var (heap, reader) = PastReader.Read(fields.Needed("heap"), limits, assumptions);
        TakenOut? taken = null;
        if (fields["yield"]?.Fields("l", "day", "all") is { } yield)
        {
            taken = new TakenOut(
                yield.Needed("l").Number(0, 10_000_000),
                yield.Needed("day").Number(0, 100_000),
                yield["all"]?.YesNo() ?? false
            );
        }

        return new TaughtHeap(
            HeapLessons.Learn(new LessonQuestion(heap, taken), cancellation),
            measures,
            [.. assumptions.All],
            MaterialCautions.Of(
                reader.Ingredients.Where(i => i.Amount.High > 0).Select(i => i.Material),
                "legionella_dust",
                "computed_heat"
            )
        );
    }
}
