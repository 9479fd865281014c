using System.Collections.Immutable;
using Heapwright.Core.Forecasts;
using Heapwright.Core.Quantities;
using Heapwright.Core.Reasons;
using Heapwright.Core.Simulation;
using Heapwright.Numerics.Sampling;

namespace Heapwright.Core.Lessons;

/// <summary>What a heap taught: predicted from the recipe alone against measured, and what its readings say of the model.</summary>
public static class HeapLessons
{
    /// <summary>
    /// How far the middle of a parameter must have moved to be told of, in standard deviations of its prior: an estimate of
    /// our own.
    /// </summary>
    public const double Moved = 0.7;

    /// <summary>The longest a heap is followed, d.</summary>
    public const double LongestDays = 120;

    // Blocks of members that are followed from the last reading to the day of taking out: the tail of a small wet heap is
    // slow to compute, and a volume needs no more.
    private const int YieldBlocks = 4;

    // Compost lies looser in a barrow than in the heap: an estimate of our own.
    private static readonly Spread DugOut = Spread.Of(1, 1.15, 1.3);

    private static readonly (LessonSubject Subject, HeapFigure Figure)[] Read =
    [
        (LessonSubject.Peak, HeapFigure.Peak),
        (LessonSubject.First55, HeapFigure.First55),
        (LessonSubject.DaysAt55, HeapFigure.DaysAt55),
        (LessonSubject.Below40, HeapFigure.Below40),
    ];

    /// <summary>Looks back at a heap.</summary>
    /// <param name="question">The heap.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>The same bits for the same question and kind of processor.</returns>
    /// <exception cref="ArgumentException">The volume of the mixture is not known, or nothing is in it.</exception>
    public static HeapLesson Learn(
        LessonQuestion question,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(question);
        var heap = question.Heap with
        {
            Heap = question.Heap.Heap with { FollowParcels = false },
            Knowledge = HeapKnowledge.None,
            AheadDays = Forecaster.Every,
            DecisionDays = Forecaster.Every,
        };
        var fit = Forecaster.Run(heap, cancellation);
        var (before, after) = fit.BuiltMoisture;
        var width = (before.High - before.Low) / (2 * NormalDistribution.Z95);
        var core = ReadingDraws.CoreOf(heap);
        return new HeapLesson
        {
            Rows = Rows(question, heap, core, cancellation),
            Fit = fit,
            Moved = [.. fit.Fitted.Where(f => Math.Abs(f.Score.Mean) >= Moved)],
            MoistureMoved = width > 0 && Math.Abs(after.Typical - before.Typical) >= Moved * width,
            CanBeKept = core.Length >= ReadingGaps.Least && !fit.Stale.Contains(StaleReason.Misfit),
        };
    }

    private static ImmutableArray<LessonRow> Rows(
        LessonQuestion question,
        ForecastQuestion heap,
        ImmutableArray<DigestedReading> core,
        CancellationToken cancellation
    )
    {
        // Before any reading.
        var blind = HeapFitter.Fit(heap with { Readings = [], Moisture = [] }, cancellation);
        var stream = new SplitMix64(SplitMix64.SeedFor(heap.Heap.Seed, "looking back"));
        var lasting = ReadingDraws.UsualLasting(blind.After.Count, ref stream);
        var rows = ImmutableArray.CreateBuilder<LessonRow>();
        var drawn =
            core.Length > 0
                ? ReadingDraws.Of(blind.Now, blind.After, core, lasting, ref stream)
                : [];
        double[] days = [.. core.Select(r => r.Day)];
        double[] read = [.. core.Select(r => r.Value)];
        foreach (var (subject, figure) in Read)
        {
            if (ReadingGaps.Fault(figure, core) is { } fault)
            {
                rows.Add(Untold(subject, fault));
                continue;
            }

            var predicted = FigureRange.Of(drawn.Select(d => CourseFigures.Of(figure, days, d)));
            var measured = CourseFigures.Of(figure, days, read);
            rows.Add(
                new LessonRow(subject, null, predicted, measured, predicted.Against(measured), null)
            );
        }

        rows.AddRange(Moisture(heap, blind, lasting, ref stream));
        rows.Add(Yield(question.Yield, blind, ref stream, cancellation));
        return rows.ToImmutable();
    }

    private static IEnumerable<LessonRow> Moisture(
        ForecastQuestion heap,
        HeapFit blind,
        double[] lasting,
        ref SplitMix64 stream
    )
    {
        var squeezes = ReadingDigest.Of(heap).Where(r => r.Moisture).ToArray();
        if (squeezes.Length == 0)
        {
            return [Untold(LessonSubject.Moisture, Reason.Of("lessons.no_squeeze"))];
        }

        var drawn = ReadingDraws.Of(blind.Now, blind.After, squeezes, lasting, ref stream);
        return
        [
            .. squeezes.Select(
                (s, r) =>
                {
                    var predicted = FigureRange.Of(drawn.Select(d => d[r]));
                    return new LessonRow(
                        LessonSubject.Moisture,
                        s.Day,
                        predicted,
                        s.Value,
                        predicted.Against(s.Value),
                        null
                    );
                }
            ),
        ];
    }

    private static LessonRow Yield(
        TakenOut? taken,
        HeapFit blind,
        ref SplitMix64 stream,
        CancellationToken cancellation
    )
    {
        if (taken is null)
        {
            return Untold(LessonSubject.Yield, Reason.Of("lessons.no_yield"));
        }

        if (taken.Day > LongestDays)
        {
            return Untold(LessonSubject.Yield, Reason.Of("lessons.yield_late", LongestDays));
        }

        var run = Followed(blind, taken.Day, cancellation);
        const int Loosened = 8; // draws for each member
        var litres = new double[Loosened * run.Blocks.Length * HeapBlock.Lanes];
        for (var i = 0; i < litres.Length; i++)
        {
            var (b, lane) = Math.DivRem(i / Loosened, HeapBlock.Lanes);
            var looks = run.Blocks[b].Looks;
            var (before, after, share) = ProbeModel.Between(looks, taken.Day);
            litres[i] =
                1000
                * (((1 - share) * looks[before].Volume[lane]) + (share * looks[after].Volume[lane]))
                * DugOut.AtScore(ReadingDraws.Normal(ref stream), SpreadScale.Positive);
        }

        var predicted = FigureRange.Of(litres);
        // A part that is more than was to be expected of all tells already.
        return taken.IsAll || taken.Litres > predicted.High
            ? new LessonRow(
                LessonSubject.Yield,
                taken.Day,
                predicted,
                taken.Litres,
                predicted.Against(taken.Litres),
                null
            )
            : new LessonRow(
                LessonSubject.Yield,
                taken.Day,
                predicted,
                taken.Litres,
                LessonVerdict.CannotTell,
                Reason.Of("lessons.yield_part")
            );
    }

    // A run that reaches a day; beyond the last reading it is some of the members.
    private static EnsembleRun Followed(HeapFit blind, double day, CancellationToken cancellation)
    {
        var (now, from) = (blind.Now, blind.Question.FromDay);
        if (day <= from)
        {
            return now;
        }

        var events = blind.Question.Heap.Events;
        var past = events.Count(e => e is Added && e.Day <= from);
        var count = Math.Min(YieldBlocks, now.Blocks.Length);
        return now.Branch(
            now.Question with
            {
                Events = [.. events.Where(e => e.Day > from)],
                Days = day,
            },
            [.. now.Members.Additions.Skip(past)],
            cancellation,
            [.. Enumerable.Range(0, count).Select(k => k * now.Blocks.Length / count)]
        );
    }

    private static LessonRow Untold(LessonSubject subject, Reason why) =>
        new(subject, null, null, null, LessonVerdict.CannotTell, why);
}
