using System.Collections.Immutable;
using Heapwright.Core.Readings;
using Heapwright.Numerics.Assimilation;

namespace Heapwright.Core.Forecasts;

/// <summary>
/// What a heap is other than its fitted members, told from its own readings: an error of which the size is not known, that
/// forgets itself within a month. Several sizes are tried, each counts as much as the readings speak for it.
/// </summary>
/// <remarks>
/// e(t) e(t') = k² s(t) s(t') exp(−|t − t'|/30 d), k of 1, 2, 4 and 8: where it is large and what is left changes slowly,
/// a forecast starts from the readings and keeps only the changes of the members.
/// </remarks>
internal sealed class CourseError
{
    /// <summary>The time in which this error forgets itself, d.</summary>
    private const double Memory = 30;

    private const double HeavyTails = 4; // degrees of freedom of Student's t
    private const int Rounds = 3;

    // The members were moved towards these very readings, which says too much for small errors: a power of their likelihood.
    private const double Evidence = 0.3;

    private const double Unusual = 0.1; // a size is less likely by e each ten
    private const int Fewest = 3; // readings from which on sizes are told apart

    private static readonly double[] Tried = [1, 2, 4, 8];

    private readonly ImmutableArray<DigestedReading> readings;
    private readonly double[][] left; // [reading][member]
    private readonly double[] middle; // [reading]: what is left, the middle of the members
    private readonly Cholesky[] factors; // [size]
    private readonly double[] upTo; // [size]: chances of it and those before it

    private CourseError(
        ImmutableArray<DigestedReading> readings,
        double[][] left,
        double[] middle,
        Cholesky[] factors,
        double[] upTo
    )
    {
        this.readings = readings;
        this.left = left;
        this.middle = middle;
        this.factors = factors;
        this.upTo = upTo;
    }

    /// <summary>What readings leave of it.</summary>
    /// <param name="readings">The readings; squeezes say nothing of it.</param>
    /// <param name="predicted">Shape [reading][member]: what the members say of them.</param>
    public static CourseError Of(
        IReadOnlyList<DigestedReading> readings,
        IReadOnlyList<double[]> predicted
    )
    {
        int[] rows = [.. Enumerable.Range(0, readings.Count).Where(r => !readings[r].Moisture)];
        ImmutableArray<DigestedReading> known = [.. rows.Select(r => readings[r])];
        double[][] residuals =
        [
            .. rows.Select(r => Array.ConvertAll(predicted[r], p => readings[r].Value - p)),
        ];
        double[] medians = [.. residuals.Select(Middle)];
        var covariances = new Cholesky[Tried.Length];
        var chances = new double[Tried.Length];
        for (var k = 0; k < covariances.Length; k++)
        {
            (covariances[k], chances[k]) = Trial(known, residuals, medians, Tried[k]);
            chances[k] -= Unusual * Tried[k];
            if (k > 0 && known.Length < Fewest)
            {
                chances[k] = double.NegativeInfinity;
            }
        }

        var best = chances.Max();
        var sum = chances.Sum(c => Math.Exp(c - best));
        var shares = new double[chances.Length];
        for (var k = 0; k < shares.Length; k++)
        {
            shares[k] = (k > 0 ? shares[k - 1] : 0) + (Math.Exp(chances[k] - best) / sum);
        }

        return new CourseError(known, residuals, medians, covariances, shares);
    }

    /// <summary>The size, of those tried, that a member has.</summary>
    /// <param name="at">The member's place among the sizes, 0 to 1.</param>
    public int SizeOf(double at)
    {
        var k = 0;
        while (k < upTo.Length - 1 && at > upTo[k])
        {
            k++;
        }

        return k;
    }

    /// <summary>What it will be in a member, and the standard deviation that remains, K, for each size.</summary>
    /// <param name="day">When, days since building.</param>
    /// <param name="excess">How far the middle of the members is then above the air, K.</param>
    /// <param name="spot">Where.</param>
    /// <returns>Shape [size]: the weights, of shape [reading], on what is left, and the standard deviation, K.</returns>
    public (double[] Weights, double Deviation)[] Ahead(
        double day,
        double excess,
        ProbeSpot spot = ProbeSpot.Core
    )
    {
        var ahead = new (double[], double)[Tried.Length];
        for (var k = 0; k < ahead.Length; k++)
        {
            var (weights, _) = Ahead(k, day, excess, spot);
            // The error is as large as becomes the heap as it is, not as its members have it.
            var shift = 0.0;
            for (var r = 0; r < weights.Length; r++)
            {
                shift += weights[r] * middle[r];
            }

            ahead[k] = Ahead(k, day, excess + shift, spot);
        }

        return ahead;
    }

    /// <summary>What it adds to a member, K.</summary>
    /// <param name="weights">The weights of its size.</param>
    /// <param name="member">The member.</param>
    public double Shift(double[] weights, int member)
    {
        var shift = 0.0;
        for (var r = 0; r < weights.Length; r++)
        {
            shift += weights[r] * left[r][member];
        }

        return shift;
    }

    private (double[] Weights, double Deviation) Ahead(
        int size,
        double day,
        double excess,
        ProbeSpot spot
    )
    {
        var at = new DigestedReading(day, 0, 0, spot, null, excess);
        var with = new double[readings.Length];
        for (var r = 0; r < with.Length; r++)
        {
            with[r] = Together(at, readings[r], Tried[size]);
        }

        double[] weights = [.. with];
        factors[size].Solve(weights);
        var known = 0.0;
        for (var r = 0; r < with.Length; r++)
        {
            known += weights[r] * with[r];
        }

        return (weights, Math.Sqrt(Math.Max(Together(at, at, Tried[size]) - known, 0)));
    }

    // The covariance under one size, each reading with an error of Student's t, and how likely what is left then is.
    private static (Cholesky Factor, double Likelihood) Trial(
        ImmutableArray<DigestedReading> readings,
        double[][] left,
        double[] middle,
        double size
    )
    {
        var n = readings.Length;
        var covariance = new double[n, n];
        var raised = Enumerable.Repeat(1.0, n).ToArray();
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < i; j++)
            {
                covariance[i, j] = covariance[j, i] = Together(readings[i], readings[j], size);
            }
        }

        Cholesky Factor()
        {
            for (var i = 0; i < n; i++)
            {
                covariance[i, i] =
                    Together(readings[i], readings[i], size) + (Noise(readings[i]) * raised[i]);
            }

            return Cholesky.Of(covariance);
        }

        for (var round = 0; round < Rounds; round++)
        {
            var now = Factor();
            double[] pull = [.. middle];
            now.Solve(pull);
            for (var i = 0; i < n; i++)
            {
                var unit = new double[n];
                unit[i] = 1;
                now.Whiten(unit);
                var noise = Noise(readings[i]);
                var had = noise * raised[i];
                var error = had * pull[i];
                var remains = had - (had * had * unit.Sum(x => x * x));
                raised[i] = (HeavyTails + (((error * error) + remains) / noise)) / (HeavyTails + 1);
                if (readings[i].Agreed)
                {
                    raised[i] = Math.Min(raised[i], 1);
                }
            }
        }

        var factor = Factor();
        var members = n > 0 ? left[0].Length : 0;
        var squares = 0.0;
        var row = new double[n];
        for (var i = 0; i < members; i++)
        {
            for (var r = 0; r < n; r++)
            {
                row[r] = left[r][i];
            }

            factor.Whiten(row);
            foreach (var x in row)
            {
                squares += x * x / members;
            }
        }

        var price = raised.Sum(f => Math.Max(Math.Log(f), 0));
        return (factor, -0.5 * Evidence * (factor.LogDeterminant + squares + price));
    }

    private static double Noise(DigestedReading r) => r.Deviation * r.Deviation;

    private static double Together(DigestedReading a, DigestedReading b, double size) =>
        size
        * size
        * ErrorModel.Size(a)
        * ErrorModel.Size(b)
        * Math.Exp(-Math.Abs(a.Day - b.Day) / Memory)
        * (a.Spot == b.Spot ? 1 : ErrorModel.InStep);

    private static double Middle(double[] values)
    {
        double[] sorted = [.. values.Order()];
        var half = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }
}
