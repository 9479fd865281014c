using System.Collections.Immutable;
using Heapwright.App.Contract;
using Heapwright.Core.Forecasts;
using NodaTime;

namespace Heapwright.App.Outlooks;

/// <summary>
/// A forecast as it was made, kept so that the yard has it at once and so that it can be held against what came. It keeps
/// figures and words, no sentences: these are made for who reads them.
/// </summary>
public sealed record KeptForecast
{
    // Days between two points of the course that are kept.
    private const double Every = 0.5;

    /// <summary>Which.</summary>
    public required Guid Id { get; init; }

    /// <summary>The heap.</summary>
    public required Guid HeapId { get; init; }

    /// <summary>When it was made.</summary>
    public required Instant MadeAt { get; init; }

    /// <summary>How many entries the diary had.</summary>
    public required long Entries { get; init; }

    /// <summary>The SHA-256 of its whole question, in hexadecimal digits.</summary>
    public required string QuestionHash { get; init; }

    /// <summary>The version of the engine that made it.</summary>
    public required string Engine { get; init; }

    /// <summary>The fingerprint of the data it was made with.</summary>
    public required string Data { get; init; }

    /// <summary>The present it was made for, days since building.</summary>
    public required double FromDay { get; init; }

    /// <summary>How many readings it was fitted to.</summary>
    public required int ReadingsUsed { get; init; }

    /// <summary>What is advised.</summary>
    public required AdvisedStep Step { get; init; }

    /// <summary>In what share of the cases that serves better than waiting, 0 to 1.</summary>
    public required double ChanceBetter { get; init; }

    /// <summary>The latest reading against what was expected; null without readings.</summary>
    public required ExpectedReading? Latest { get; init; }

    /// <summary>Why it should not be leant on; empty where it may be.</summary>
    public required ImmutableArray<StaleReason> Stale { get; init; }

    /// <summary>The core from the present on if the heap is left alone, by day.</summary>
    public required ImmutableArray<CourseDay> Course { get; init; }

    /// <summary>What is kept of a forecast.</summary>
    /// <param name="made">The forecast.</param>
    /// <param name="heapId">The heap.</param>
    /// <param name="entries">How many entries its diary had.</param>
    /// <param name="questionHash">The SHA-256 of the question.</param>
    /// <param name="now">The present.</param>
    public static KeptForecast Of(
        MadeForecast made,
        Guid heapId,
        long entries,
        string questionHash,
        Instant now
    )
    {
        ArgumentNullException.ThrowIfNull(made);
        var forecast = made.Forecast;
        return new KeptForecast
        {
            Id = Guid.CreateVersion7(now.ToDateTimeOffset()),
            HeapId = heapId,
            MadeAt = now,
            Entries = entries,
            QuestionHash = questionHash,
            Engine = ForecastAnswers.EngineVersion,
            Data = Library.DataFiles.Fingerprint,
            FromDay = forecast.Question.FromDay,
            ReadingsUsed = forecast.ReadingsUsed,
            Step = AdvisedStep.Of(made.Advice[0].Action),
            ChanceBetter = made.Advice[0].ChanceBetter,
            Latest = forecast.Latest,
            Stale = forecast.Stale,
            Course = [.. Days(forecast)],
        };
    }

    /// <summary>What was forecast for a day; null where it lies before the present it was made for, or too far ahead.</summary>
    /// <param name="day">Days since building.</param>
    public CourseDay? At(double day)
    {
        for (var i = 1; i < Course.Length; i++)
        {
            if (day >= Course[i - 1].Day && day <= Course[i].Day)
            {
                return CourseDay.Between(Course[i - 1], Course[i], day);
            }
        }

        return null;
    }

    private static IEnumerable<CourseDay> Days(ForecastAnswer forecast)
    {
        var last = double.NegativeInfinity;
        for (var t = 0; t < forecast.Days.Length; t++)
        {
            var day = forecast.Days[t];
            if (day - last < Every - 1e-9 && t < forecast.Days.Length - 1)
            {
                continue;
            }

            last = day;
            yield return CourseDay.Of(day, forecast.Core[t]);
        }
    }
}
