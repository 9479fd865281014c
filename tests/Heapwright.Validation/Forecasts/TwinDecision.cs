using System.Collections.Immutable;
using Heapwright.Core.Advice;
using Heapwright.Core.Forecasts;
using Heapwright.Core.Simulation;

namespace Heapwright.Validation.Forecasts;

/// <summary>
/// Four ways to look after the same heap, and what really came of each by day 28: left alone, turned every four days,
/// turned whenever a reading falls below 55 °C after having been above, and turned and watered when advised.
/// </summary>
/// <param name="Waiting">Left alone.</param>
/// <param name="EveryFourDays">Turned on days 4, 8, 12, 16 and 20.</param>
/// <param name="ByTemperature">Turned on the day after a reading below 55 °C that follows one at or above.</param>
/// <param name="Advised">Done what was advised, asked every other day from day 4 to day 18.</param>
public sealed record TwinDecision(
    TwinResult Waiting,
    TwinResult EveryFourDays,
    TwinResult ByTemperature,
    TwinResult Advised
)
{
    private const double End = 28;
    private const double LastDecision = 18;
    private const double Hot = 55;

    /// <summary>Looks after a twin in all four ways.</summary>
    /// <param name="twin">The twin; its own plans are not followed.</param>
    public static TwinDecision Of(HeapTwin twin) =>
        new(
            Result(twin, []),
            Result(twin, [.. new[] { 4.0, 8, 12, 16, 20 }.Select(Turn)]),
            Result(twin, ByReadings(twin)),
            Result(twin, ByAdvice(twin))
        );

    private static ImmutableArray<HeapEvent> ByReadings(HeapTwin twin)
    {
        ImmutableArray<HeapEvent> events = [];
        var armed = false;
        for (var day = 1; day <= 20; day++)
        {
            var read = Readings(twin, events, day)[^1].Temperature.DegreesCelsius;
            if (read >= Hot)
            {
                armed = true;
            }
            else if (armed)
            {
                events = events.Add(Turn(day + 0.2));
                armed = false;
            }
        }

        return events;
    }

    private static ImmutableArray<HeapEvent> ByAdvice(HeapTwin twin)
    {
        ImmutableArray<HeapEvent> events = [];
        for (var day = 4; day <= LastDecision; day += 2)
        {
            var now = day + 0.1;
            var forecast = Forecaster.Run(
                new ForecastQuestion
                {
                    Heap = twin.Question() with { Events = events },
                    Readings = Readings(twin, events, day),
                    FromDay = now,
                    AheadDays = 1,
                },
                TestContext.Current.CancellationToken
            );
            var advised = Adviser
                .Advise(forecast, AdviceAim.SafeHeat, [], TestContext.Current.CancellationToken)[0]
                .Action;
            if (advised.OnDay < now + 2)
            {
                events = events.AddRange(advised.Events);
            }
        }

        return events;
    }

    // One a day, up to a day.
    private static ImmutableArray<Core.Readings.ProbeReading> Readings(
        HeapTwin twin,
        ImmutableArray<HeapEvent> events,
        int day
    ) => twin.Read(twin.Live(day + 0.1, events), Enumerable.Range(1, day).Select(d => (double)d));

    private static Turned Turn(double day) => new(day, 0.8, TurnedPart.All);

    private static TwinResult Result(HeapTwin twin, ImmutableArray<HeapEvent> events)
    {
        var truth = twin.Live(End, events);
        var turns = events.OfType<Turned>().Count();
        var litres = events.OfType<Watered>().Sum(e => e.Litres);
        return new TwinResult(
            truth.Milestones[0].ShareHeldPercent,
            (turns * Math.Max(10, 40 * twin.Believed.CubicMetres)) + (0.15 * litres),
            turns
        );
    }
}
