using CsCheck;
using Heapwright.Core.Readings;
using static Heapwright.Core.Tests.Readings.Entries;

namespace Heapwright.Core.Tests.Readings;

public sealed class HeapDiaryTests
{
    [Fact]
    public void Entries_OutOfOrder_StandInOrderOfTime()
    {
        var diary = HeapDiary.Of([Read(2, 48, 55), Turn(3, 72), Read(1, 24, 40)]);

        Assert.Equal([Id(1), Id(2), Id(3)], diary.Standing.Select(s => s.Entry.Id));
    }

    [Fact]
    public void Entry_Twice_CountsOnce()
    {
        var again = Read(1, 24, 40) with { ReceivedAt = Built.AddHours(99), Way = EntryWay.Mqtt };

        var diary = HeapDiary.Of([Read(1, 24, 40), again]);

        Assert.Single(diary.Standing);
        Assert.Empty(diary.Conflicts);
    }

    [Fact]
    public void SameId_OtherContent_IsAConflictAndTheFirstThatArrivedCounts()
    {
        var late = Read(1, 24, 62) with { ReceivedAt = Built.AddHours(99) };

        var diary = HeapDiary.Of([late, Read(1, 24, 40)]);

        Assert.Equal([Id(1)], diary.Conflicts);
        Assert.Equal([40], Celsius(diary));
    }

    [Fact]
    public void Correction_OfAReading_TakesItsPlace()
    {
        var diary = HeapDiary.Of([Read(1, 24, 140), Correct(2, 25, 1, 60)]);

        var standing = Assert.Single(diary.Standing);
        Assert.Equal(60, ((TemperatureEntry)standing.Entry).Temperature.DegreesCelsius, 9);
        Assert.Equal(Id(1), standing.First.Id);
        Assert.Equal([Id(2)], standing.Corrections.Select(c => c.Id));
    }

    [Fact]
    public void Correction_ThatStrikesOut_LeavesNothingStanding()
    {
        var diary = HeapDiary.Of([Read(1, 24, 140), Correct(2, 25, 1, null)]);

        Assert.Empty(diary.Standing);
        Assert.Equal(Id(1), Assert.Single(diary.StruckOut).First.Id);
    }

    [Fact]
    public void CorrectionOfACorrection_PutsItsEntryInThePlaceOfTheFirst() =>
        Assert.Equal(
            [61],
            Celsius(HeapDiary.Of([Correct(3, 26, 2, 61), Correct(2, 25, 1, 60), Read(1, 24, 140)]))
        );

    [Fact]
    public void CorrectionStruckOut_CountsAsNeverMade() =>
        Assert.Equal(
            [40],
            Celsius(
                HeapDiary.Of([Read(1, 24, 40), Correct(2, 25, 1, null), Correct(3, 26, 2, null)])
            )
        );

    [Fact]
    public void Correction_BeforeWhatItCorrects_WaitsAndThenCounts()
    {
        var waiting = HeapDiary.Of([Correct(2, 25, 1, 60)]);
        var arrived = HeapDiary.Of([Correct(2, 25, 1, 60), Read(1, 24, 140)]);

        Assert.Empty(waiting.Standing);
        Assert.Equal([Id(2)], waiting.Waiting.Select(c => c.Id));
        Assert.Equal([60], Celsius(arrived));
        Assert.Empty(arrived.Waiting);
    }

    [Fact]
    public void TwoCorrections_OfOneReading_TheLaterMadeCounts() =>
        Assert.Equal(
            [62],
            Celsius(HeapDiary.Of([Correct(3, 27, 1, 62), Correct(2, 25, 1, 60), Read(1, 24, 140)]))
        );

    [Fact]
    public void LaterCorrectionTakenBack_TheEarlierOneCountsAgain() =>
        Assert.Equal(
            [60],
            Celsius(
                HeapDiary.Of([
                    Read(1, 24, 140),
                    Correct(2, 25, 1, 60),
                    Correct(3, 27, 1, 62),
                    Correct(4, 28, 3, null),
                ])
            )
        );

    [Fact]
    public void CorrectionsInARing_CorrectNothing()
    {
        var diary = HeapDiary.Of([Read(1, 24, 40), Correct(2, 25, 3, 60), Correct(3, 26, 2, 61)]);

        Assert.Equal([40], Celsius(diary));
        Assert.Equal(2, diary.Waiting.Count);
    }

    [Fact]
    public void CorrectionsInALongChain_TheLastOneCounts()
    {
        const int Links = 50_000;
        var entries = new List<DiaryEntry> { Read(1, 24, 140) };
        entries.AddRange(
            Enumerable
                .Range(2, Links)
                .Select(n => Correct(n, 24 + n, n - 1, n == Links + 1 ? 60 : 50))
        );

        Assert.Equal([60], Celsius(HeapDiary.Of(entries)));
    }

    [Fact]
    public void Diary_OfEntriesInAnyOrder_IsTheSame()
    {
        var some = Gen.Select(Gen.Int[1, 12], Gen.Int[1, 12], Gen.Int[0, 2]);
        Gen.Select(some.Array[1, 14], Gen.Int)
            .Sample(
                (parts, seed) =>
                {
                    var entries = parts
                        .Select(
                            (p, i) =>
                                (DiaryEntry)(
                                    p.Item3 == 0 ? Read(p.Item1, p.Item1, 40)
                                    : p.Item3 == 1 ? Correct(p.Item1, i, p.Item2, 60 + i)
                                    : Correct(p.Item1, i, p.Item2, null)
                                )
                        )
                        .ToArray();
                    var shuffled = entries.ToArray();
                    new Random(seed).Shuffle(shuffled);

                    Assert.Equal(HeapDiary.Of(entries), HeapDiary.Of(shuffled));
                }
            );
    }

    private static IEnumerable<double> Celsius(HeapDiary diary) =>
        diary.Standing.Select(s =>
            Math.Round(((TemperatureEntry)s.Entry).Temperature.DegreesCelsius, 9)
        );
}
