using Heapwright.App.Contract;
using Heapwright.App.Texts;
using Heapwright.Core.Lessons;
using Heapwright.Core.Simulation;

namespace Heapwright.App.Lessons;

/// <summary>Reads which heaps are held against each other, or what is not done.</summary>
public static class ComparisonReader
{
    private static readonly (string Word, Func<HeapEvent, bool> Is)[] Deeds =
    [
        ("turn", e => e is Turned),
        ("water", e => e is Watered),
        ("add", e => e is Added),
        ("cover", e => e is Covered),
    ];

    /// <summary>What a heap can be held against itself without.</summary>
    public static IReadOnlyList<string> Without { get; } = [.. Deeds.Select(d => d.Word)];

    /// <summary>The figures that can decide; the first does unless told.</summary>
    public static IReadOnlyList<string> Deciding => LessonWords.Figures;

    /// <summary>What a figure is called.</summary>
    /// <param name="word">One of <see cref="Deciding"/>.</param>
    /// <param name="measures">The measures.</param>
    public static string Name(string word, Measures measures) => LessonWords.Name(word, measures);

    /// <summary>Reads a question.</summary>
    /// <param name="input">The question; see <see cref="TaughtQuestion"/>.</param>
    /// <param name="limits">How much may be asked.</param>
    /// <param name="assumptions">Takes what is assumed.</param>
    /// <exception cref="InputProblem">The question is wrong.</exception>
    internal static AskedComparison Read(
        Input input,
        SimulateLimits limits,
        Assumptions assumptions
    )
    {
        var fields = input.Fields("heap", "other", "without", "by", "schema");
        var (heap, reader) = PastReader.Read(fields.Needed("heap"), limits, assumptions);
        var decides = fields["by"]?.Choice([.. LessonWords.Figures]) ?? LessonWords.Figures[0];
        var question = new ComparisonQuestion { Heap = heap, Changed = heap.Heap };
        if (fields["without"]?.Choice([.. Without]) is { } without)
        {
            var left = Deeds.First(d => d.Word == without).Is;
            if (!heap.Heap.Events.Any(e => left(e) && e.Day <= heap.FromDay))
            {
                throw new InputProblem(
                    "heapwright",
                    "",
                    Words.Of("lessons.nothing_left_out", null, without)
                );
            }

            question = question with
            {
                Changed = heap.Heap with { Events = [.. heap.Heap.Events.Where(e => !left(e))] },
            };
            return new AskedComparison(question, decides, without, [reader]);
        }

        var (other, second) = PastReader.Read(fields.Needed("other"), limits, assumptions);
        question = question with
        {
            Other = other,
            Changed = other.Heap with { Weather = heap.Heap.Weather },
        };
        return new AskedComparison(question, decides, null, [reader, second]);
    }
}
