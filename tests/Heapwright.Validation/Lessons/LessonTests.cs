using System.Collections.Immutable;
using Heapwright.Core.Forecasts;
using Heapwright.Core.Lessons;
using Heapwright.Core.Quantities;
using Heapwright.Core.Readings;
using Heapwright.Core.Simulation;
using Heapwright.Validation.Forecasts;
using UnitsNet;

namespace Heapwright.Validation.Lessons;

/// <summary>What is told of a heap and of two, and what is not.</summary>
public class LessonTests
{
    private static readonly HeapTwin Twin = new(2, TwinStructure.Same);

    /// <summary>Nothing is invented where nothing was measured.</summary>
    [Fact]
    public void Learn_WithoutReadings_CannotTellAnything()
    {
        var lesson = HeapLessons.Learn(
            new LessonQuestion(Ask([], []), null),
            TestContext.Current.CancellationToken
        );

        Assert.All(lesson.Rows, r => Assert.Equal(LessonVerdict.CannotTell, r.Verdict));
        Assert.All(lesson.Rows, r => Assert.Null(r.Measured));
        Assert.All(lesson.Rows, r => Assert.NotNull(r.Why));
        Assert.Empty(lesson.Moved);
        Assert.False(lesson.CanBeKept);
    }

    /// <summary>A gap in the hot time hides days, not the highest reading.</summary>
    [Fact]
    public void Learn_ReadingsWithAGap_TellsThePeakOnly()
    {
        var lesson = HeapLessons.Learn(
            new LessonQuestion(Ask([], [(1, 50), (2, 60), (9, 60), (10, 50), (11, 45)]), null),
            TestContext.Current.CancellationToken
        );

        Assert.NotNull(Row(lesson, LessonSubject.Peak).Predicted);
        Assert.Equal(60, Row(lesson, LessonSubject.Peak).Measured);
        Assert.Equal("lessons.gap", Row(lesson, LessonSubject.DaysAt55).Why!.Code);
    }

    /// <summary>A heap hotter than any such heap is outside; what was taken out of an open heap settles nothing.</summary>
    [Fact]
    public void Learn_ImpossiblyHot_IsOutside()
    {
        var lesson = HeapLessons.Learn(
            new LessonQuestion(
                Ask([], [(1, 88), (2, 89), (3, 90), (4, 89), (5, 88)]),
                new TakenOut(1, 5, IsAll: false)
            ),
            TestContext.Current.CancellationToken
        );

        Assert.Equal(LessonVerdict.Higher, Row(lesson, LessonSubject.Peak).Verdict);
        Assert.Equal("lessons.yield_part", Row(lesson, LessonSubject.Yield).Why!.Code);
        Assert.False(lesson.CanBeKept);
    }

    /// <summary>A heap held against itself with nothing done otherwise has no effect, to the bit.</summary>
    [Fact]
    public void Compare_NothingChanged_HasNoEffect()
    {
        var heap = Ask([], [(1, 40), (2, 55), (3, 60), (4, 58), (5, 55)]);
        var compared = HeapComparer.Compare(
            new ComparisonQuestion { Heap = heap, Changed = heap.Heap },
            TestContext.Current.CancellationToken
        );

        Assert.All(
            compared.Figures,
            f =>
            {
                Assert.Equal(ComparisonVerdict.NothingChanged, f.EffectVerdict);
                Assert.Equal(Spread.Exact(0), f.Effect);
            }
        );
        Assert.Equal(Spread.Exact(0), compared.ShareHeldEffect);
    }

    /// <summary>Without readings of the other heap nobody can tell.</summary>
    [Fact]
    public void Compare_OtherWithoutReadings_CannotTell()
    {
        var heap = Ask([], [(1, 40), (2, 55), (3, 60), (4, 58), (5, 55)]);
        var other = Ask([new Turned(3, 0.8, TurnedPart.All)], []) with { FromDay = 5 };
        var compared = HeapComparer.Compare(
            new ComparisonQuestion
            {
                Heap = heap,
                Changed = other.Heap,
                Other = other,
            },
            TestContext.Current.CancellationToken
        );

        Assert.All(compared.Figures, f => Assert.Equal(ComparisonVerdict.CannotTell, f.Verdict));
        Assert.All(compared.Figures, f => Assert.Equal("lessons.few_readings", f.Why!.Code));
    }

    /// <summary>What differs is named, each kind once, and what is the same is so too.</summary>
    [Fact]
    public void Differences_TurnAndWater_AreTwoKinds()
    {
        var plain = Twin.Question() with { Events = [] };
        var done = plain with { Events = [new Turned(3, 0.8, TurnedPart.All), new Watered(4, 30)] };

        Assert.Empty(HeapDifferences.Changed(HeapDifferences.Of(plain, plain)));
        Assert.Equal(
            [DifferenceKind.Turns, DifferenceKind.Water],
            HeapDifferences.Changed(HeapDifferences.Of(plain, done))
        );
        // Half a day apart is the same day, and five litres more are the same can.
        var nearly = done with
        {
            Events = [new Turned(3.5, 0.8, TurnedPart.All), new Watered(4, 35)],
        };
        Assert.Empty(HeapDifferences.Changed(HeapDifferences.Of(done, nearly)));
        var less = done with
        {
            Events = [new Turned(3.6, 0.8, TurnedPart.All), new Watered(4, 36)],
        };
        Assert.Equal(
            [DifferenceKind.Turns, DifferenceKind.Water],
            HeapDifferences.Changed(HeapDifferences.Of(done, less))
        );
    }

    /// <summary>A prior that a lesson narrowed keeps at least the stated share of its width.</summary>
    [Fact]
    public void Knowledge_InATable_NeverNarrowsBelowTheFloor()
    {
        var table = App.Library.ParameterReader.Table;
        var knowledge = HeapKnowledge.From(
            Enumerable.Repeat(
                new Dictionary<HeapParameter, ParameterScore>
                {
                    [HeapParameter.FastRate] = new(1, 0.05),
                },
                200
            )
        );
        var narrowed = knowledge.In(table).Prior(HeapParameter.FastRate);
        var plain = table.Prior(HeapParameter.FastRate);

        double Width(Spread s) => Math.Log(s.High / s.Low);
        Assert.InRange(Width(narrowed) / Width(plain), HeapKnowledge.Floor, 0.75);
        Assert.True(narrowed.Typical > plain.Typical);
        Assert.Equal(
            table.Prior(HeapParameter.SlowRate),
            knowledge.In(table).Prior(HeapParameter.SlowRate)
        );
    }

    private static LessonRow Row(HeapLesson lesson, LessonSubject subject) =>
        lesson.Rows.Single(r => r.Subject == subject);

    private static ForecastQuestion Ask(
        ImmutableArray<HeapEvent> events,
        (double Day, double Celsius)[] readings
    ) =>
        new()
        {
            Heap = Twin.Question() with { Events = events },
            Readings =
            [
                .. readings.Select(r => new ProbeReading(
                    r.Day,
                    Temperature.FromDegreesCelsius(r.Celsius)
                )),
            ],
            FromDay = readings.Select(r => r.Day).DefaultIfEmpty(0).Max(),
        };
}
