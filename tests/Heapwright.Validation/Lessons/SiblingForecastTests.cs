using System.Globalization;
using Heapwright.Core.Forecasts;
using Heapwright.Core.Lessons;
using Heapwright.Validation.Forecasts;

namespace Heapwright.Validation.Lessons;

/// <summary>
/// What a heap taught, used for the next one of the same person in the same bay; HEAPWRIGHT_SIBLINGS=100 makes as many
/// (docs/measurements.md).
/// </summary>
public class SiblingForecastTests(ITestOutputHelper output)
{
    private const int Days = 14;

    private static readonly int Siblings = int.Parse(
        Environment.GetEnvironmentVariable("HEAPWRIGHT_SIBLINGS") ?? "16",
        CultureInfo.InvariantCulture
    );

    /// <summary>The next heap is foretold better, and its range is narrower, than without the lesson.</summary>
    [Fact]
    public void NextHeap_WithTheLessonOfTheOneBefore_IsForetoldBetter()
    {
        var scores = Enumerable.Range(1, Siblings).Select(Score).ToArray();
        double Root(Func<(Course Plain, Course Taught), Course> of) =>
            Math.Sqrt(scores.Average(s => of(s).SquaredError));
        var (plain, taught) = (Root(s => s.Plain), Root(s => s.Taught));
        var (wide, narrow) = (
            scores.Average(s => s.Plain.Width),
            scores.Average(s => s.Taught.Width)
        );
        output.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{Siblings} pairs, core of days 1 to {Days} before any reading: error {plain:0.0} K without the lesson, {taught:0.0} K with it; width of the 90 % band {wide:0.0} and {narrow:0.0} K; inside {100 * scores.Average(s => s.Plain.Covered):0} and {100 * scores.Average(s => s.Taught.Covered):0} %; better in {scores.Count(s => s.Taught.SquaredError < s.Plain.SquaredError)}"
            )
        );
        Assert.True(taught < plain, $"{taught} against {plain} K");
        Assert.True(narrow < wide, $"{narrow} against {wide} K");
        Assert.True(scores.Average(s => s.Taught.Covered) >= 0.8);
    }

    private static (Course Plain, Course Taught) Score(int number)
    {
        var first = new HeapTwin(number, TwinStructure.Same);
        var next = new HeapTwin(number, TwinStructure.Same, sibling: 1);
        var lesson = HeapLessons.Learn(
            new LessonQuestion(
                new ForecastQuestion
                {
                    Heap = first.Question(),
                    Readings = first.Read(
                        first.Live(Days + 1),
                        Enumerable.Range(0, Days).Select(d => d + 0.8)
                    ),
                    FromDay = Days,
                },
                null
            ),
            TestContext.Current.CancellationToken
        );
        var truth = next.Live(Days + 1);
        var question = new ForecastQuestion
        {
            Heap = next.Question(),
            FromDay = 0,
            AheadDays = Days,
            DecisionDays = Days,
        };
        return (
            Course.Of(question, truth),
            Course.Of(question with { Knowledge = HeapKnowledge.From([lesson.Fit.Learned]) }, truth)
        );
    }

    private sealed record Course(double SquaredError, double Width, double Covered)
    {
        public static Course Of(ForecastQuestion question, Core.Simulation.SimulationAnswer truth)
        {
            var forecast = Forecaster.Run(question, TestContext.Current.CancellationToken);
            var (error, width, covered, n) = (0.0, 0.0, 0, 0);
            for (var t = 0; t < forecast.Days.Length; t++)
            {
                if (forecast.Days[t] < 1)
                {
                    continue;
                }

                var range = Core.Quantities.Spread.OfSample(forecast.Core[t]);
                var value = HeapTwin.Core(truth, forecast.Days[t]);
                error += (range.Typical - value) * (range.Typical - value);
                width += range.High - range.Low;
                covered += value >= range.Low && value <= range.High ? 1 : 0;
                n++;
            }

            return new Course(error / n, width / n, (double)covered / n);
        }
    }
}
