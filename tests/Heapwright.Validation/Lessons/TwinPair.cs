using System.Collections.Immutable;
using Heapwright.Core.Forecasts;
using Heapwright.Core.Lessons;
using Heapwright.Core.Simulation;
using Heapwright.Validation.Forecasts;

namespace Heapwright.Validation.Lessons;

/// <summary>
/// Two invented heaps of one person by one recipe, read every day for three weeks, held against each other: once nothing
/// was changed, once the second was turned or watered. What the change really does to the first is known.
/// </summary>
/// <param name="Alike">The comparison where nothing was changed.</param>
/// <param name="Changed">The comparison with the change.</param>
/// <param name="TrueEffect">By figure: what the change really does to the first heap.</param>
public sealed record TwinPair(
    ImmutableArray<ComparedFigure> Alike,
    ImmutableArray<ComparedFigure> Changed,
    ImmutableArray<double> TrueEffect
)
{
    private const int Days = 21;

    /// <summary>Makes and compares a pair.</summary>
    /// <param name="number">Its number.</param>
    /// <param name="structure">In what its truth differs from the model.</param>
    public static TwinPair Of(int number, TwinStructure structure)
    {
        var first = new HeapTwin(number, structure);
        var second = new HeapTwin(number, structure, sibling: 1);
        HeapEvent change =
            number % 2 == 0
                ? new Turned(5, 0.8, TurnedPart.All)
                : new Watered(4, Math.Round(60 * first.Believed.CubicMetres));
        ImmutableArray<HeapEvent> plain = [.. first.Question().Events];
        var changed = plain.Add(change);
        var cancel = TestContext.Current.CancellationToken;
        var heap = Ask(first, plain);
        return new TwinPair(
            HeapComparer
                .Compare(
                    new ComparisonQuestion
                    {
                        Heap = heap,
                        Changed = heap.Heap,
                        Other = Ask(second, plain),
                    },
                    cancel
                )
                .Figures,
            HeapComparer
                .Compare(
                    new ComparisonQuestion
                    {
                        Heap = heap,
                        Changed = heap.Heap with { Events = changed },
                        Other = Ask(second, changed),
                    },
                    cancel
                )
                .Figures,
            [
                .. Enum.GetValues<HeapFigure>()
                    .Select(f => True(f, first, changed) - True(f, first, plain)),
            ]
        );
    }

    private static ForecastQuestion Ask(HeapTwin twin, ImmutableArray<HeapEvent> events) =>
        new()
        {
            Heap = twin.Question() with { Events = events },
            Readings = twin.Read(
                twin.Live(Days + 0.1, events),
                Enumerable.Range(0, Days).Select(d => d + 0.8)
            ),
            FromDay = Days - 0.2,
        };

    private static double True(HeapFigure figure, HeapTwin twin, ImmutableArray<HeapEvent> events)
    {
        const double Step = 0.125;
        const double Last = Days - 0.2;
        var truth = twin.Live(Days + 0.1, events);
        double[] days = [.. Enumerable.Range(0, (int)(Last / Step) + 1).Select(k => k * Step)];
        var value = CourseFigures.Of(
            figure,
            days,
            Array.ConvertAll(days, d => HeapTwin.Core(truth, d))
        );
        return figure == HeapFigure.Peak ? value : Math.Min(value, days[^1]);
    }
}
