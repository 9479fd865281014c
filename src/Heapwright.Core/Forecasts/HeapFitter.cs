using System.Collections.Immutable;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;
using Heapwright.Core.Simulation;
using Heapwright.Numerics.Assimilation;
using Heapwright.Numerics.Sampling;

namespace Heapwright.Core.Forecasts;

/// <summary>
/// Fits a heap to its readings: many members are run from the day it was built and screened by how well they do, for
/// whether a heap heats at all is not a matter of a little more or less; those that stay are moved towards the readings
/// in three passes of an ensemble smoother, each run anew from the first day, so that masses always add up.
/// </summary>
/// <remarks>docs/models/forecast.md has the equations and the sources.</remarks>
internal sealed class HeapFitter
{
    // Shares of what is left after the screen, pass by pass; they add up to 1.
    private static readonly double[] Passes = [0.15, 0.35, 0.5];

    // Readings of later days, which the screen and the first pass do not see.
    private static readonly double[] LatePasses = [0, 0.4, 0.6];

    // Whether a heap heats is settled in its first days; to run all that are screened further would tell nothing.
    private const double ScreenedDays = 10;

    private const double HeavyTails = 4; // degrees of freedom of Student's t
    private const double MostScreened = 0.5; // of all that readings say
    private const double LatestWithin = 0.5; // d
    private const double LeastCounting = 0.1; // of the fitted members, when some are chosen in the end
    private const double GoingOn = 0.6; // of the fitted members: so many are drawn of them
    private const double RoughTolerance = 0.1; // K: the runs on the way to the fit

    private readonly ForecastQuestion question;
    private readonly CancellationToken cancellation;
    private readonly HeapMatter typical;
    private readonly ImmutableArray<DigestedReading> readings;
    private readonly bool[] latest; // [reading]
    private readonly bool[] late; // [reading]: after what is screened
    private readonly double[] observed;
    private readonly double[] plain; // [reading]: 1, no variance raised
    private SplitMix64 stream;

    private HeapFitter(ForecastQuestion question, Mixture mixture, CancellationToken cancellation)
    {
        this.question = question;
        this.cancellation = cancellation;
        typical = HeapMatter.Of(mixture, -1);
        readings = ReadingDigest.Of(question);
        observed = [.. readings.Select(r => r.Value)];
        plain = [.. readings.Select(_ => 1.0)];
        stream = new SplitMix64(SplitMix64.SeedFor(question.Heap.Seed, "fit"));
        var last = readings.Where(r => !r.Moisture).Select(r => r.Day).DefaultIfEmpty(-1).Max();
        latest = [.. readings.Select(r => !r.Moisture && r.Day > last - LatestWithin)];
        if (latest.Count(l => !l) < 2)
        {
            Array.Clear(latest); // too few before it: all are fitted alike
        }

        // Where everything is read later, everything is screened.
        var first = readings.Length > 0 ? readings[0].Day : 0;
        late =
        [
            .. readings.Select(r => r.Day > Math.Max(ScreenedDays, first + (ScreenedDays / 2))),
        ];
    }

    /// <summary>Fits a heap.</summary>
    /// <param name="question">The heap and its readings.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>The same bits for the same question, whatever the number of threads.</returns>
    public static HeapFit Fit(ForecastQuestion question, CancellationToken cancellation)
    {
        var screened = (int)
            System.Numerics.BitOperations.RoundUpToPowerOf2((uint)(2 * question.Heap.Members));
        var wide = question.Heap with { Members = screened, Days = double.PositiveInfinity };
        var mixture = HeapBuilder.MixtureFor(wide.Mixture, screened, wide.Seed);
        var unknowns = Unknowns.Draw(wide, HeapMembers.Of(wide, mixture), question.Knowledge);
        return new HeapFitter(question, mixture, cancellation).Fit(unknowns);
    }

    private HeapFit Fit(Unknowns all)
    {
        var n = question.Heap.Members;
        if (readings.IsEmpty)
        {
            var some = all.Take([.. Enumerable.Range(0, n)]);
            return Fitted(some, some, [], [], null);
        }

        var last = readings.Max(r => r.Day);
        var factors = plain;
        var predicted = Predict(
            all,
            Enumerable.Range(0, readings.Length).Where(r => !late[r]).Max(r => readings[r].Day)
        );
        var (chosen, used) = Screen(predicted);
        var unknowns = all.Take(chosen);
        var before = all.Take([.. Enumerable.Range(0, n)]);
        predicted = [.. predicted.Select(row => chosen.Select(i => row[i]).ToArray())];
        var few = latest.All(l => !l);
        var expected = few ? Expected(predicted) : null;
        for (var pass = 0; pass < Passes.Length; pass++)
        {
            if (pass > 0)
            {
                predicted = Predict(unknowns, last);
            }

            var isLast = pass == Passes.Length - 1;
            if (isLast && !few)
            {
                expected = Expected(predicted);
            }

            factors = Factors(predicted);
            Update(
                unknowns,
                predicted,
                factors,
                Passes[pass] * (1 - used),
                LatePasses[pass],
                isLast
            );
        }

        return Fitted(before, unknowns, predicted, factors, expected);
    }

    private HeapFit Fitted(
        Unknowns before,
        Unknowns after,
        double[][] predicted,
        double[] factors,
        ExpectedReading? expected
    )
    {
        if (predicted.Length > 0)
        {
            predicted = Predict(after, readings.Max(r => r.Day));
            after = after.Take(Kept(predicted));
        }

        var now = EnsembleRun.From(
            question.Heap with
            {
                Days = question.FromDay,
                Members = after.Count,
            },
            typical,
            after.ToMembers(),
            cancellation
        );
        if (predicted.Length > 0)
        {
            predicted = ProbeModel.Predict(now, readings, after.Offset, after.Deeper);
        }

        return new HeapFit
        {
            Question = question,
            Readings = readings,
            Factors = factors,
            Lasting = ErrorModel.Lasting(readings, factors, predicted),
            Error = CourseError.Of(readings, predicted),
            Predicted = predicted,
            Before = before,
            After = after,
            Now = now,
            Latest = expected,
            Misfit = Misfit(predicted),
        };
    }

    // What was moved along straight lines may have come to lie where no reading is: members are drawn anew by how near
    // they are, evenly along the order of warmth at the last reading, some of them more than once.
    private int[] Kept(double[][] predicted)
    {
        var likelihood = Likelihood(predicted, [.. Enumerable.Range(0, readings.Length)]);
        var power = Tempered(likelihood, LeastCounting * likelihood.Length, 1);
        var best = likelihood.Max();
        var row = predicted[^1];
        int[] order = [.. Enumerable.Range(0, row.Length).OrderBy(i => row[i]).ThenBy(i => i)];
        double[] weights = [.. order.Select(i => Math.Exp(power * (likelihood[i] - best)))];
        var kept = new int[Math.Max(1, (int)Math.Round(GoingOn * row.Length))];
        var step = weights.Sum() / kept.Length;
        var (at, sum) = (0, weights[0]);
        for (var k = 0; k < kept.Length; k++)
        {
            while (sum < (k + 0.5) * step && at < weights.Length - 1)
            {
                sum += weights[++at];
            }

            kept[k] = order[at];
        }

        return kept;
    }

    private double[] Likelihood(double[][] predicted, int[] old)
    {
        var likelihood = new double[predicted[0].Length];
        var factor = Cholesky.Of(Part(Covariance(plain), old));
        for (var i = 0; i < likelihood.Length; i++)
        {
            double[] left = [.. old.Select(r => observed[r] - predicted[r][i])];
            factor.Whiten(left);
            var distance = left.Sum(x => x * x);
            // Student's t in as many dimensions as there are readings: a slip of the pen decides nothing.
            likelihood[i] =
                -0.5 * (HeavyTails + left.Length) * Math.Log(1 + (distance / HeavyTails));
        }

        return likelihood;
    }

    private double[][] Predict(Unknowns unknowns, double lastDay)
    {
        var run = EnsembleRun.From(
            question.Heap with
            {
                Days = lastDay,
                Members = unknowns.Count,
                FollowParcels = false,
                Tolerance = Math.Max(question.Heap.Tolerance, RoughTolerance),
            },
            typical,
            unknowns.ToMembers(),
            cancellation
        );
        return ProbeModel.Predict(run, readings, unknowns.Offset, unknowns.Deeper);
    }

    // Which members go on, and how much of what the readings say has been used to choose them.
    private (int[] Chosen, double Used) Screen(double[][] predicted)
    {
        var n = question.Heap.Members;
        int[] old = [.. Old().Where(r => !late[r])];
        var likelihood = Likelihood(predicted, old);
        var members = likelihood.Length;
        var power = Tempered(likelihood, n, MostScreened);
        // Sampling without replacement: the largest of likelihood to that power times a Gumbel number.
        var draw = new SplitMix64(SplitMix64.SeedFor(question.Heap.Seed, "screen"));
        var keys = new double[members];
        for (var i = 0; i < members; i++)
        {
            var u = Math.Clamp(draw.NextUnit(), 1e-12, 1 - 1e-12);
            keys[i] = (power * likelihood[i]) - Math.Log(-Math.Log(u));
        }

        var row = predicted[old[^1]];
        int[] chosen =
        [
            .. Enumerable
                .Range(0, members)
                .OrderByDescending(i => keys[i])
                .ThenBy(i => i)
                .Take(n)
                // Members alike stand side by side: they share their steps.
                .OrderBy(i => row[i])
                .ThenBy(i => i),
        ];
        return (chosen, power);
    }

    // The power at which as many members as are wanted still count.
    private static double Tempered(double[] likelihood, double wanted, double most)
    {
        var best = likelihood.Max();
        double Effective(double power)
        {
            var (sum, squares) = (0.0, 0.0);
            foreach (var l in likelihood)
            {
                var w = Math.Exp(power * (l - best));
                sum += w;
                squares += w * w;
            }

            return sum * sum / squares;
        }

        var (low, high) = (0.0, most);
        if (Effective(high) >= wanted)
        {
            return high;
        }

        for (var i = 0; i < 40; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Effective(middle) >= wanted ? (middle, high) : (low, middle);
        }

        return low;
    }

    private void Update(
        Unknowns unknowns,
        double[][] predicted,
        double[] factors,
        double share,
        double lateShare,
        bool isLast
    )
    {
        double Weight(int r) =>
            latest[r] ? 1
            : late[r] ? lateShare
            : share;
        // The latest reading comes in whole at the last pass, for until then it was to be foretold.
        int[] rows = isLast
            ? [.. Enumerable.Range(0, readings.Length)]
            : [.. Old().Where(r => Weight(r) > 0)];
        var covariance = Part(Covariance(factors), rows);
        for (var a = 0; a < rows.Length; a++)
        {
            for (var b = 0; b < rows.Length; b++)
            {
                covariance[a, b] /= Math.Sqrt(Weight(rows[a]) * Weight(rows[b]));
            }
        }

        EnsembleSmoother.Update(
            unknowns.Scores,
            [.. rows.Select(r => predicted[r])],
            [.. rows.Select(r => observed[r])],
            covariance,
            ref stream
        );
        unknowns.Confine();
    }

    // Student's t: what is far from where the members have it counts as read with a larger error.
    private double[] Factors(double[][] predicted)
    {
        var covariance = Covariance(plain);
        var factors = new double[readings.Length];
        for (var r = 0; r < factors.Length; r++)
        {
            var (mean, variance) = Moments(predicted[r]);
            var away = observed[r] - mean;
            var expected = variance + covariance[r, r];
            factors[r] = Math.Max(1, (HeavyTails + (away * away / expected)) / (HeavyTails + 1));
        }

        return factors;
    }

    private ExpectedReading? Expected(double[][] predicted)
    {
        var r = readings.Length - 1;
        while (r >= 0 && readings[r].Moisture)
        {
            r--;
        }

        if (r < 0)
        {
            return null;
        }

        // Its range: that of the members, with the wandering error as the readings before leave it, and its own error.
        int[] old = [.. Old().Where(o => readings[o].Day < readings[r].Day)];
        var error = CourseError.Of(
            [.. old.Select(o => readings[o])],
            [.. old.Select(o => predicted[o])]
        );
        var (mean, _) = Moments(predicted[r]);
        var ahead = error.Ahead(
            readings[r].Day,
            mean - (readings[r].Value - readings[r].Excess),
            readings[r].Spot
        );
        var noise = readings[r].Deviation * readings[r].Deviation;
        var n = predicted[r].Length;
        var values = new double[n];
        for (var i = 0; i < n; i++)
        {
            // Strata in two orders that have nothing to do with each other nor with that of the members.
            double Stratum(double step) => ((i * step % 1) * (n - 1) / n) + (0.5 / n);
            var (weights, deviation) = ahead[error.SizeOf(Stratum(0.7548776662466927))];
            values[i] =
                predicted[r][i]
                + error.Shift(weights, i)
                + (
                    Math.Sqrt((deviation * deviation) + noise)
                    * NormalDistribution.Quantile(Stratum(0.6180339887498949))
                );
        }

        return new ExpectedReading(readings[r].Day, Spread.OfSample(values), observed[r]);
    }

    private double Misfit(double[][] predicted)
    {
        if (predicted.Length == 0)
        {
            return 0;
        }

        var covariance = Covariance(plain);
        return Math.Sqrt(
            Enumerable
                .Range(0, predicted.Length)
                .Average(r =>
                {
                    var (mean, variance) = Moments(predicted[r]);
                    return (observed[r] - mean)
                        * (observed[r] - mean)
                        / (variance + covariance[r, r]);
                })
        );
    }

    private int[] Old() => [.. Enumerable.Range(0, readings.Length).Where(r => !latest[r])];

    private double[,] Covariance(double[] factors) => ErrorModel.Covariance(readings, factors);

    private static double[,] Part(double[,] matrix, int[] rows)
    {
        var part = new double[rows.Length, rows.Length];
        for (var a = 0; a < rows.Length; a++)
        {
            for (var b = 0; b < rows.Length; b++)
            {
                part[a, b] = matrix[rows[a], rows[b]];
            }
        }

        return part;
    }

    private static (double Mean, double Variance) Moments(double[] values)
    {
        var mean = values.Average();
        return (mean, values.Sum(v => (v - mean) * (v - mean)) / (values.Length - 1));
    }
}
