using Heapwright.App.Diary;
using Heapwright.App.Sites;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;
using NodaTime;

namespace Heapwright.App.Outlooks;

/// <summary>The one next step of a heap, with what it rests on.</summary>
public sealed record HeapStep
{
    // How often a heap is read: common practice, no source.
    private static readonly (int ToDay, int Every)[] ReadEvery = [(21, 2), (60, 4), (120, 7)];

    // Advice for later than this is for another day.
    private const double Soon = 0.5; // d

    /// <summary>What is asked.</summary>
    public required HeapStepKind Kind { get; init; }

    /// <summary>The present, days since building.</summary>
    public required double Day { get; init; }

    /// <summary>The last reading of the core; null for none.</summary>
    public TemperatureEntry? LastReading { get; init; }

    /// <summary>Days since the last reading, or since building where there is none.</summary>
    public int DaysUnread { get; init; }

    /// <summary>The forecast it rests on; null where it rests on none.</summary>
    public KeptForecast? Forecast { get; init; }

    /// <summary>The code of what comes before every other advice, whatever is forecast; null for none.</summary>
    public string? Alarm { get; init; }

    /// <summary>The test to read; null for none.</summary>
    public HomeTest? Test { get; init; }

    /// <summary>The day from which a test is to be read; null for none.</summary>
    public LocalDate? TestFrom { get; init; }

    /// <summary>Whether somebody should go there today.</summary>
    public bool IsDue =>
        Kind
            is HeapStepKind.KeepAway
                or HeapStepKind.LetHeatOut
                or HeapStepKind.Read
                or HeapStepKind.ReadTest
                or HeapStepKind.Do
                or HeapStepKind.SayHelped;

    /// <summary>The step of a heap.</summary>
    /// <param name="record">The heap with its diary; the last weeks are enough.</param>
    /// <param name="forecast">Its last forecast; null for none.</param>
    /// <param name="entries">How many entries its diary has.</param>
    /// <param name="now">The present.</param>
    public static HeapStep Of(HeapRecord record, KeptForecast? forecast, long entries, Instant now)
    {
        ArgumentNullException.ThrowIfNull(record);
        var zone = record.Kept.TimeZone();
        var last = record
            .Diary.Standing.Select(s => s.Entry)
            .OfType<TemperatureEntry>()
            .LastOrDefault(r => r.Spot == ProbeSpot.Core && record.Believed(r.Id));
        var day = record.DayOf(now.ToDateTimeOffset());
        var step = new HeapStep
        {
            Kind = HeapStepKind.Leave,
            Day = day,
            LastReading = last,
            DaysUnread = SiteDays.Between(
                last is null ? record.Kept.BuiltAt : Instant.FromDateTimeOffset(last.At),
                now,
                zone
            ),
            Forecast = forecast,
        };
        if (HeapAlarms.Urgent(record, last, now) is { } alarm)
        {
            return step with
            {
                Kind = alarm == HeapAlarms.TooHot ? HeapStepKind.LetHeatOut : HeapStepKind.KeepAway,
                Alarm = alarm,
            };
        }

        var today = SiteDays.DayOf(now, zone);
        foreach (var begun in DoneQuestion.Begun(record))
        {
            if (HomeTests.ToRead(begun, zone) is var (first, _) && first <= today)
            {
                return step with
                {
                    Kind = HeapStepKind.ReadTest,
                    Test = ((TestedDeed)begun.Deed).Test,
                    TestFrom = first,
                };
            }
        }

        if (IsReadingDue(day, step.DaysUnread, last is null))
        {
            return step with { Kind = HeapStepKind.Read };
        }

        if (day > OutlookQuestion.LastDay)
        {
            return step with { Kind = HeapStepKind.CheckDone };
        }

        if (forecast is null || forecast.Entries != entries)
        {
            return step with { Kind = HeapStepKind.Thinking };
        }

        if (!forecast.Step.IsWaiting && forecast.Step.OnDay - day <= Soon)
        {
            return step with { Kind = HeapStepKind.Do };
        }

        return SignsConclusion.ToAsk(record, now) is null
            ? step
            : step with
            {
                Kind = HeapStepKind.SayHelped,
            };
    }

    // A heap that was never read is read from the day after building on.
    private static bool IsReadingDue(double day, int daysUnread, bool isFirst)
    {
        foreach (var (toDay, every) in ReadEvery)
        {
            if (day <= toDay)
            {
                return daysUnread >= (isFirst ? 1 : every);
            }
        }

        return false;
    }
}
