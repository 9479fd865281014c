using System.Collections.Immutable;
using Heapwright.Core.Quantities;
using Heapwright.Core.Simulation;
using Heapwright.Numerics.Sampling;

namespace Heapwright.Core.Forecasts;

/// <summary>Forecasts a heap from its readings: the entry to everything in this folder.</summary>
public static class Forecaster
{
    /// <summary>Days between the times of a forecast.</summary>
    public const double Every = BlockRun.LookEvery;

    private const double Hot = 55; // °C
    private const double OldAfter = 4; // d
    private const double MisfitFrom = 2;
    private const double DoubtfulFrom = 4; // the variance of a reading raised so many times

    /// <summary>Forecasts a heap.</summary>
    /// <param name="question">The heap, its readings and the present.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>The same bits for the same question and kind of processor, whatever the number of threads.</returns>
    /// <exception cref="ArgumentException">The volume of the mixture is not known, or nothing is in it.</exception>
    public static ForecastAnswer Run(
        ForecastQuestion question,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(question);
        var fit = HeapFitter.Fit(question, cancellation);
        var planned = Planned(fit, cancellation);
        ImmutableArray<double> days =
        [
            .. Enumerable
                .Range(0, (int)Math.Floor((question.AheadDays / Every) + 1e-9) + 1)
                .Select(k => question.FromDay + (k * Every)),
        ];
        if (question.FromDay + question.AheadDays - days[^1] > 1e-9)
        {
            days = days.Add(question.FromDay + question.AheadDays);
        }

        double[] followed =
        [
            .. planned.Blocks[0].Looks.Select(l => l.Day).Where(d => d >= question.FromDay),
        ];
        var course = Core(fit, planned, followed);
        ImmutableArray<double> whole =
        [
            .. planned
                .Blocks[0]
                .Looks.Select(l => l.Day)
                .Where(d => d <= question.FromDay + question.AheadDays),
        ];
        return new ForecastAnswer
        {
            Question = question,
            Days = days,
            Core = Core(fit, planned, days),
            CourseDays = whole,
            Course = Core(fit, planned, whole),
            ReadingsUsed = question.Readings.Count(r => r.Day <= question.FromDay && r.Day >= 0),
            Latest = fit.Latest,
            Fitted = Fitted(fit),
            BuiltMoisture = fit.BuiltMoisture,
            MoistureNow = MoistureNow(fit),
            Reaches55 = Crossings(followed, course, upwards: true),
            Leaves55 = Crossings(followed, course, upwards: false),
            Outcome = HeapOutcome.Of(planned, question.FromDay),
            Doubtful =
            [
                .. fit
                    .Readings.Where((r, i) => !r.Moisture && fit.Factors[i] >= DoubtfulFrom)
                    .Select(r => (r.Day, r.Value)),
            ],
            Stale = Stale(fit),
            Runs = (fit, planned),
        };
    }

    private static EnsembleRun Planned(HeapFit fit, CancellationToken cancellation)
    {
        var question = fit.Question;
        var past = question.Heap.Events.Where(e => e.Day <= question.FromDay).ToArray();
        return fit.Now.Branch(
            fit.Now.Question with
            {
                Events = [.. question.Heap.Events.Except(past)],
                Days = question.FromDay + Math.Max(question.DecisionDays, question.AheadDays),
            },
            [.. fit.Now.Members.Additions.Skip(past.OfType<Added>().Count())],
            cancellation
        );
    }

    /// <summary>The core of every member with what the readings say of the error of the model, °C.</summary>
    /// <param name="fit">The fitted heap.</param>
    /// <param name="run">A run of its members that goes far enough.</param>
    /// <param name="days">Days since building.</param>
    /// <returns>Shape [time][member].</returns>
    internal static double[][] Core(HeapFit fit, EnsembleRun run, IReadOnlyList<double> days)
    {
        var n = run.Question.Members;
        var core = Regions.Core(run.Grid);
        var course = new double[days.Count][];
        var size = (int)System.Numerics.BitOperations.RoundUpToPowerOf2((uint)n);
        var points = HeapBuilder.PointsFor(n, run.Question.Seed).Block("error of the model");
        var (errors, sizes) = (new double[size], new double[size]);
        points.Fill(0, errors);
        points.Fill(1, sizes);
        for (var t = 0; t < course.Length; t++)
        {
            course[t] = CoreAt(run, core, days[t]);
            double[] sorted = [.. course[t]];
            Array.Sort(sorted);
            var ahead = fit.Error.Ahead(
                days[t],
                sorted[n / 2] - run.Question.Weather.At(days[t]).Air
            );
            for (var i = 0; i < n; i++)
            {
                var (weights, deviation) = ahead[fit.Error.SizeOf(sizes[i])];
                course[t][i] +=
                    fit.Error.Shift(weights, i)
                    + (deviation * NormalDistribution.Quantile(errors[i]));
            }
        }

        return course;
    }

    /// <summary>The core of every member at a day, without the error of the model, °C.</summary>
    /// <param name="run">The run.</param>
    /// <param name="core">The zones of the core.</param>
    /// <param name="day">When.</param>
    /// <returns>Shape [member].</returns>
    internal static double[] CoreAt(EnsembleRun run, (int Zone, double Weight)[] core, double day)
    {
        var (before, after, share) = ProbeModel.Between(run.Blocks[0].Looks, day);
        var values = new double[run.Question.Members];
        for (var i = 0; i < values.Length; i++)
        {
            var (b, lane) = Math.DivRem(i, HeapBlock.Lanes);
            var looks = run.Blocks[b].Looks;
            foreach (var (z, weight) in core)
            {
                values[i] +=
                    weight
                    * (
                        ((1 - share) * looks[before].Celsius[z][lane])
                        + (share * looks[after].Celsius[z][lane])
                    );
            }
        }

        return values;
    }

    // Upwards: the first passage; downwards: the last one, after which the core stays below.
    private static double[] Crossings(double[] days, double[][] course, bool upwards)
    {
        var n = course[0].Length;
        var found = new double[n];
        for (var i = 0; i < n; i++)
        {
            found[i] = double.NaN;
            for (var t = 1; t < days.Length; t++)
            {
                var (a, b) = (course[t - 1][i], course[t][i]);
                if (upwards ? a < Hot && b >= Hot : a >= Hot && b < Hot)
                {
                    found[i] = days[t - 1] + ((days[t] - days[t - 1]) * (Hot - a) / (b - a));
                    if (upwards)
                    {
                        break;
                    }
                }
            }

            if (!upwards && course[^1][i] >= Hot)
            {
                found[i] = double.NaN;
            }
        }

        return found;
    }

    private static ImmutableArray<FittedParameter> Fitted(HeapFit fit)
    {
        var parameters = fit.After.Parameters;
        var fitted = new List<FittedParameter>(parameters.Length);
        var table = fit.Question.Heap.Parameters;
        for (var k = 0; k < parameters.Length; k++)
        {
            var prior = table.Prior(parameters[k]);
            Spread Values(double[] scores) =>
                Spread.OfSample([.. scores.Select(z => prior.AtScore(z, HeapParameters.Scale))]);
            var after = fit.After.Scores[k];
            var mean = after.Average();
            var deviation = Math.Sqrt(after.Sum(z => (z - mean) * (z - mean)) / (after.Length - 1));
            fitted.Add(
                new FittedParameter(
                    parameters[k],
                    Values(fit.Before.Scores[k]),
                    Values(after),
                    new ParameterScore(mean, deviation)
                )
            );
        }

        // Learned: how far the middle has moved, and how much narrower it got.
        return
        [
            .. fitted.OrderByDescending(f =>
                Math.Abs(f.Score.Mean) + Math.Max(0, 1 - f.Score.Deviation)
            ),
        ];
    }

    private static Spread MoistureNow(HeapFit fit)
    {
        var n = fit.Now.Question.Members;
        var values = new double[n];
        for (var i = 0; i < n; i++)
        {
            var (b, lane) = Math.DivRem(i, HeapBlock.Lanes);
            values[i] = fit.Now.Blocks[b].Looks[^1].MoistureOf(lane);
        }

        return Spread.OfSample(values);
    }

    private static ImmutableArray<StaleReason> Stale(HeapFit fit)
    {
        var temperatures = fit.Readings.Where(r => !r.Moisture).ToArray();
        if (temperatures.Length == 0)
        {
            return [StaleReason.NoReadings];
        }

        var reasons = ImmutableArray.CreateBuilder<StaleReason>();
        if (fit.Question.FromDay - temperatures.Max(r => r.Day) > OldAfter)
        {
            reasons.Add(StaleReason.OldReadings);
        }

        if (fit.Misfit > MisfitFrom)
        {
            reasons.Add(StaleReason.Misfit);
        }

        return reasons.ToImmutable();
    }
}
