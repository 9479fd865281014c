using System.Collections.Immutable;
using Heapwright.Core.Forecasts;
using Heapwright.Core.Quantities;
using Heapwright.Core.Simulation;
using Heapwright.Numerics.Sampling;

namespace Heapwright.Core.Lessons;

/// <summary>
/// Holds a heap against another one, or against itself with something done otherwise. The fitted members are run once as
/// it was and once with the change; and once more as another heap of the same person with nothing changed, which says what
/// chance alone would do.
/// </summary>
/// <remarks>docs/models/lessons.md has the equations.</remarks>
public static class HeapComparer
{
    private const double Step = Forecaster.Every;

    /// <summary>Compares.</summary>
    /// <param name="question">The heaps.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>The same bits for the same question and kind of processor.</returns>
    /// <exception cref="ArgumentException">The volume of a mixture is not known, or nothing is in it.</exception>
    public static HeapComparison Compare(
        ComparisonQuestion question,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(question);
        var heap = question.Heap with
        {
            Heap = question.Heap.Heap with { FollowParcels = false },
            Knowledge = HeapKnowledge.None,
            AheadDays = Step,
            DecisionDays = Step,
        };
        var fit = Forecaster.Run(heap, cancellation);
        var read = ReadingDraws.CoreOf(heap);
        var others = question.Other is { } other ? ReadingDraws.CoreOf(other) : [];
        var last = Last(read, heap.FromDay);
        if (question.Other is { } second)
        {
            last = Math.Min(last, Last(others, second.FromDay));
        }

        last = Math.Max(Step, Math.Min(last, HeapLessons.LongestDays));
        double[] days =
        [
            .. Enumerable.Range(0, (int)Math.Floor((last / Step) + 1e-9) + 1).Select(k => k * Step),
        ];
        var stream = new SplitMix64(SplitMix64.SeedFor(heap.Heap.Seed, "comparing"));
        var now = fit.Runs.Fit;
        var unchanged = CarriedRun.Of(
            question.Heap.Heap with
            {
                Days = last,
            },
            now,
            1,
            cancellation
        );
        var changed = CarriedRun.Of(question.Changed with { Days = last }, now, 1, cancellation);
        var from = ChangeDay.Of(heap.Heap, question.Changed) ?? double.PositiveInfinity;
        var isChanged = from < last;
        var error = Error(fit, days);
        var (a, b) = Courses(
            unchanged.Core(days),
            changed.Core(days),
            error,
            days,
            from,
            heap.Heap.Weather,
            ref stream
        );
        double[][]? chance = null;
        ImmutableArray<DigestedReading> seenA = [.. read.Where(r => r.Day <= last)];
        ImmutableArray<DigestedReading> seenB = [.. others.Where(r => r.Day <= last)];
        if (question.Other is { } compared && seenB.Length > 0)
        {
            var alike = CarriedRun.Of(
                heap.Heap with
                {
                    Days = last,
                    Weather = compared.Heap.Weather,
                },
                now,
                HeapKnowledge.InStep,
                cancellation
            );
            chance = ReadingDraws.Of(
                alike.Run,
                alike.Unknowns,
                seenB,
                Lasting(now, error, days, heap.Heap.Weather, unchanged.Core(days), ref stream),
                ref stream
            );
        }

        return new HeapComparison
        {
            Figures =
            [
                .. Enum.GetValues<HeapFigure>()
                    .Select(f =>
                        Figure(
                            f,
                            days,
                            a,
                            b,
                            isChanged,
                            seenA,
                            question.Other is null,
                            seenB,
                            chance
                        )
                    ),
            ],
            LastDay = last,
            ShareHeldEffect = Spread.OfSample([
                .. changed.ShareHeld().Zip(unchanged.ShareHeld(), (x, y) => x - y),
            ]),
            Fit = fit,
        };
    }

    private static double Last(ImmutableArray<DigestedReading> readings, double from) =>
        readings.Length > 0 ? readings[^1].Day : from;

    private static ComparedFigure Figure(
        HeapFigure figure,
        double[] days,
        double[][] a,
        double[][] b,
        bool isChanged,
        ImmutableArray<DigestedReading> readA,
        bool isAlone,
        ImmutableArray<DigestedReading> readB,
        double[][]? chance
    )
    {
        double Capped(double value) => Math.Min(value, Math.Max(days[^1], 0));
        double Of(double[] course, double[] at)
        {
            var value = CourseFigures.Of(figure, at, course);
            return figure == HeapFigure.Peak ? value : Capped(value);
        }

        double[] before = [.. a.Select(c => Of(c, days))];
        double[] after = [.. b.Select(c => Of(c, days))];
        var effect = Spread.OfSample([.. after.Zip(before, (x, y) => x - y)]);
        var fault = ReadingGaps.Fault(figure, readA);
        var faultB = isAlone ? null : ReadingGaps.Fault(figure, readB);
        double? Seen(ImmutableArray<DigestedReading> readings) =>
            Of([.. readings.Select(r => r.Value)], [.. readings.Select(r => r.Day)]);
        var effectVerdict =
            fault is not null ? ComparisonVerdict.CannotTell
            : !isChanged ? ComparisonVerdict.NothingChanged
            : effect.Low > 0 || effect.High < 0 ? ComparisonVerdict.MoreThanChance
            : ComparisonVerdict.CannotTell;
        var read = fault is null ? Seen(readA) : null;
        var other = chance is not null && faultB is null ? Seen(readB) : null;
        Spread? range = null;
        if (chance is not null)
        {
            double[] when = [.. readB.Select(r => r.Day)];
            range = Spread.OfSample([.. chance.Select(c => Of(c, when))]);
        }

        var verdict =
            fault is not null || faultB is not null ? ComparisonVerdict.CannotTell
            : range is not { } r || other is not { } o ? effectVerdict
            : o < r.Low || o > r.High ? ComparisonVerdict.MoreThanChance
            : ComparisonVerdict.CannotTell;
        return new ComparedFigure(
            figure,
            Spread.OfSample(before),
            Spread.OfSample(after),
            effect,
            effectVerdict,
            read,
            other,
            range,
            verdict,
            fault ?? faultB
        );
    }

    // What the readings leave of the error of the model, shape [time][member].
    private static double[][] Error(ForecastAnswer fit, double[] days)
    {
        var (now, planned) = fit.Runs;
        var with = Forecaster.Core(now, planned, days);
        var core = Regions.Core(planned.Grid);
        for (var t = 0; t < days.Length; t++)
        {
            var without = Forecaster.CoreAt(planned, core, days[t]);
            for (var i = 0; i < without.Length; i++)
            {
                with[t][i] -= without[i];
            }
        }

        return with;
    }

    // Shape [member][time]. Both have the error that the readings left of the model. To the course with the change comes
    // one that grows from the change on, to the full size of the error that wanders: how the model answers to the change
    // was never read. It is one number a member, for an error that flickers would raise every peak.
    private static (double[][] Unchanged, double[][] Changed) Courses(
        double[][] unchanged,
        double[][] changed,
        double[][] error,
        double[] days,
        double from,
        Weather weather,
        ref SplitMix64 stream
    )
    {
        var n = unchanged[0].Length;
        double[][] Empty() => [.. Enumerable.Range(0, n).Select(_ => new double[days.Length])];
        var (a, b) = (Empty(), Empty());
        for (var i = 0; i < n; i++)
        {
            var z = ReadingDraws.Normal(ref stream);
            for (var t = 0; t < days.Length; t++)
            {
                var since = Math.Max(days[t] - from, 0);
                var grown = Math.Sqrt(1 - Math.Exp(-2 * since / ErrorModel.Memory));
                var size = ErrorModel.Size(changed[t][i] - weather.At(days[t]).Air);
                a[i][t] = unchanged[t][i] + error[t][i];
                b[i][t] = changed[t][i] + error[t][i] + (grown * size * z);
            }
        }

        return (a, b);
    }

    // The error that lasts, of another heap of the same person: half in step with that of this one.
    private static double[] Lasting(
        HeapFit fit,
        double[][] error,
        double[] days,
        Weather weather,
        double[][] core,
        ref SplitMix64 stream
    )
    {
        var lasting = ReadingDraws.UsualLasting(fit.After.Count, ref stream);
        var own = Math.Sqrt(1 - (HeapKnowledge.InStep * HeapKnowledge.InStep));
        for (var i = 0; i < lasting.Length; i++)
        {
            var (sum, weight) = (0.0, 0.0);
            for (var t = 0; t < days.Length; t++)
            {
                var warm = ErrorModel.Warm(core[t][i] - weather.At(days[t]).Air);
                sum += warm * error[t][i];
                weight += warm;
            }

            var mean = fit.Lasting > 0 && weight > 0 ? sum / weight : 0;
            var spread =
                fit.Lasting > 0 ? fit.Lasting * ReadingDraws.Normal(ref stream) : lasting[i];
            lasting[i] = (HeapKnowledge.InStep * mean) + (own * spread);
        }

        return lasting;
    }
}
