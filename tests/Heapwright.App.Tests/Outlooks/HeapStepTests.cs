using Heapwright.App.Contract;
using Heapwright.App.Outlooks;
using Heapwright.App.Tests.Diary;
using Heapwright.App.Texts;
using Heapwright.Core.Forecasts;
using Heapwright.Core.Quantities;
using NodaTime;

namespace Heapwright.App.Tests.Outlooks;

/// <summary>The one next step of a heap. How often a heap is read: common practice, no source.</summary>
public sealed class HeapStepTests
{
    [Theory]
    [InlineData(0.4, HeapStepKind.Thinking)]
    [InlineData(1.1, HeapStepKind.Read)]
    public void Step_OfAHeapNeverRead_IsTheFirstReadingFromTheNextDayOn(
        double today,
        HeapStepKind kind
    ) => Assert.Equal(kind, Of(today, null).Kind);

    [Theory]
    [InlineData(11, HeapStepKind.Leave)]
    [InlineData(12, HeapStepKind.Read)]
    public void Step_InTheHotPhase_IsAReadingEverySecondDay(double today, HeapStepKind kind) =>
        Assert.Equal(kind, Of(today, Advice(), """{"day":10,"temperature_c":60}""").Kind);

    [Theory]
    [InlineData(43, HeapStepKind.Leave)]
    [InlineData(44, HeapStepKind.Read)]
    [InlineData(150, HeapStepKind.CheckDone)]
    public void Step_Later_IsAReadingMoreSeldomAndThenTheQuestionWhetherItIsDone(
        double today,
        HeapStepKind kind
    ) => Assert.Equal(kind, Of(today, Advice(), """{"day":40,"temperature_c":45}""").Kind);

    [Fact]
    public void Step_AfterSmoke_IsToKeepAwayWhateverElseIsDue()
    {
        var step = Of(
            12,
            Advice("turn"),
            """{"day":5,"temperature_c":60}""",
            """{"day":11.5,"smell":["smoke"]}"""
        );

        Assert.Equal((HeapStepKind.KeepAway, "smoke_keep_away"), (step.Kind, step.Alarm));
        Assert.Contains("fire service", Assert.Single(Why(step)), StringComparison.Ordinal);
    }

    [Fact]
    public void Step_VeryHot_IsNotToOpenItEvenIfTurningIsAdvised() =>
        Assert.Equal(
            HeapStepKind.KeepAway,
            Of(11, Advice("turn"), """{"day":10.5,"temperature_c":77}""").Kind
        );

    [Theory]
    [InlineData(69.9, 11, HeapStepKind.Leave)]
    [InlineData(70, 11, HeapStepKind.LetHeatOut)]
    [InlineData(74, 11, HeapStepKind.LetHeatOut)]
    [InlineData(72, 13, HeapStepKind.Read)]
    public void Step_AboveSeventyDegrees_IsToLetHeatOutWhileTheReadingIsFresh(
        double celsius,
        double today,
        HeapStepKind kind
    )
    {
        var step = Of(
            today,
            Advice(),
            $$"""{"day":10.5,"temperature_c":{{celsius.ToString(System.Globalization.CultureInfo.InvariantCulture)}}}"""
        );

        Assert.Equal(kind, step.Kind);
        Assert.Equal(kind is HeapStepKind.LetHeatOut or HeapStepKind.Read, step.IsDue);
        Assert.NotEmpty(Why(step));
    }

    [Fact]
    public void Step_WithATestThatCanBeRead_NamesIt()
    {
        string[] diary =
        [
            """{"day":100,"temperature_c":20}""",
            """{"day":100,"do":"test","test":"bag_test"}""",
        ];

        Assert.Equal(HeapStepKind.Leave, Of(101, Advice(), diary).Kind);
        var step = Of(104, Advice(), diary);
        Assert.Equal(HeapStepKind.ReadTest, step.Kind);
        Assert.Equal("Read the test: closed bag.", HeapStepText.Headline(step, Measures.Metric));
    }

    [Theory]
    // Turning is advised for day 11.4: that is soon on day 11, and for another day on day 10.
    [InlineData(11, HeapStepKind.Do, "Turn it, today.")]
    [InlineData(10.2, HeapStepKind.Leave, "Turn it, tomorrow.")]
    public void Step_WithAdvice_IsDueWhenItsTimeHasCome(
        double today,
        HeapStepKind kind,
        string headline
    )
    {
        var step = Of(today, Advice("turn", 11.4), """{"day":10,"temperature_c":48}""");

        Assert.Equal(kind, step.Kind);
        Assert.Equal(kind == HeapStepKind.Do, step.IsDue);
        Assert.Equal(headline, HeapStepText.Headline(step, Measures.Metric));
        Assert.Equal(
            [
                "48 °C is usual for this heap: 50 (40–60) °C was expected.",
                "Better than leaving it in 75 cases of 100.",
            ],
            Why(step)
        );
    }

    [Fact]
    public void Step_WhenSomethingWasNotedSince_WaitsForTheNextForecast() =>
        Assert.Equal(
            HeapStepKind.Thinking,
            Of(
                11,
                Advice() with
                {
                    Entries = 1,
                },
                """{"day":10,"temperature_c":48}""",
                """{"day":10.5,"temperature_c":50}"""
            ).Kind
        );

    [Fact]
    public void Misses_EndWithTheNextTurn_AndAreHeldAgainstTheDayOfTheReading()
    {
        var record = ToldDiary.Record(
            """{"day":10,"temperature_c":48}""",
            """{"day":12,"temperature_c":46}""",
            """{"day":12,"temperature_c":20,"spot":"side"}""",
            """{"day":15,"do":"turn","thoroughness":"good"}""",
            """{"day":16,"temperature_c":60}"""
        );

        // The forecast of day 10 falls from 50 to 30 in ten days: 46 on day 12, where 46 was read.
        var miss = Assert.Single(PastForecasts.Misses(record, [Advice()]));

        Assert.Equal(2, miss.AheadDays, 9);
        Assert.Equal(46, miss.Expected.P50, 9);
        Assert.Equal(0, miss.Kelvins, 9);
        Assert.True(miss.IsInHalf);
    }

    private static HeapStep Of(double today, KeptForecast? forecast, params string[] diary)
    {
        var record = ToldDiary.Record(diary);
        return HeapStep.Of(
            record,
            forecast is { Entries: 0 }
                ? forecast with
                {
                    Entries = record.Entries.Length,
                }
                : forecast,
            record.Entries.Length,
            ToldDiary.Built + Duration.FromDays(today)
        );
    }

    private static IEnumerable<string> Why(HeapStep step) =>
        HeapStepText.Why(step, Measures.Metric);

    private static KeptForecast Advice(string deed = "wait", double onDay = 10) =>
        new()
        {
            Id = Guid.CreateVersion7(),
            HeapId = ToldDiary.Heap.Id,
            MadeAt = ToldDiary.Built + Duration.FromDays(10),
            Entries = 0,
            QuestionHash = "",
            Engine = "",
            Data = "",
            FromDay = 10,
            ReadingsUsed = 1,
            Step = new AdvisedStep(deed, onDay, 0, null, null, null, null),
            ChanceBetter = 0.75,
            Latest = new ExpectedReading(10, Spread.Of(40, 50, 60), 48),
            Stale = [],
            Course = [new CourseDay(10, 40, 45, 50, 55, 60), new CourseDay(20, 20, 25, 30, 35, 40)],
        };
}
