using CsCheck;
using Heapwright.Numerics.Search;

namespace Heapwright.Numerics.Tests.Search;

/// <summary>Small random problems of the kind the search is for: a ratio kept in a band (no w), a share kept in a band by w, a cap on w.</summary>
internal static class RandomProblems
{
    /// <summary>Problems from a seed; the shape, the bounds, the spread and the tightness all vary.</summary>
    internal static readonly Gen<ChanceProblem> Any = Gen.UInt.Select(seed =>
        Make((int)(seed & 0x7fffffff))
    );

    internal static ChanceProblem Make(int seed)
    {
        var random = new Random(seed);
        int n = random.Next(1, 6);
        int s = random.Next(4) switch
        {
            0 => 0,
            1 => 1,
            2 => random.Next(2, 12),
            _ => random.Next(12, 40),
        };
        double Uniform(double a, double b) => a + ((b - a) * random.NextDouble());
        var lower = new double[n];
        var upper = new double[n];
        for (int i = 0; i < n; i++)
        {
            upper[i] = random.Next(0, n > 4 ? 5 : 7);
            lower[i] = random.Next(4) == 0 ? random.Next(0, (int)upper[i] + 1) : 0;
        }

        // Each material: share of property a, moisture m, volume v, dry mass q per unit.
        double[] ratio = [.. Enumerable.Range(0, n).Select(_ => Uniform(5, 80))];
        double[] moist = [.. Enumerable.Range(0, n).Select(_ => Uniform(0.1, 0.85))];
        double[] volume = [.. Enumerable.Range(0, n).Select(_ => Math.Round(Uniform(10, 90)))];
        double[] mass = [.. volume.Select(v => v * Uniform(0.06, 0.7))];
        double spread = Uniform(0, 0.4);
        (double cnLow, double cnHigh) = (Uniform(15, 28), Uniform(28, 45));
        (double wetLow, double wetHigh) = (Uniform(0.35, 0.5), Uniform(0.5, 0.7));
        double air = Uniform(0.1, 0.4);
        double[] slopes = [0, 0, 1 - wetLow, -(1 - wetHigh), -1.0 / 1000];
        bool scaled = random.Next(2) == 0;
        if (scaled)
        {
            slopes[4] = -1;
        }

        void Fill(
            int i,
            double noiseRatio,
            double noiseWet,
            double noiseMass,
            Action<int, double> put
        )
        {
            double wet = Math.Clamp(moist[i] + noiseWet, 0.02, 0.95);
            double m = mass[i] * noiseMass;
            double dry = m * (1 - wet);
            double carbon = 0.45 * dry;
            double nitrogen = carbon / (ratio[i] * noiseRatio);
            put(0, carbon - (cnLow * nitrogen));
            put(1, (cnHigh * nitrogen) - carbon);
            put(2, (m * wet) - (wetLow * m));
            put(3, (wetHigh * m) - (m * wet));
            double air1 = ((1 - air) * 0.85 * volume[i] / 1000) - (dry / 1600) - (m * wet / 1000);
            put(4, scaled ? air1 * 1000 : air1);
        }

        const int Rows = 5;
        var nominal = new double[Rows * n];
        var scenarios = new double[Rows * n * s];
        for (int i = 0; i < n; i++)
        {
            int variable = i;
            Fill(i, 1, 0, 1, (r, a) => nominal[(r * n) + variable] = a);
            for (int k = 0; k < s; k++)
            {
                int scenario = k;
                double Noise() =>
                    Math.Exp(spread * (random.NextDouble() + random.NextDouble() - 1) * 2);
                Fill(
                    i,
                    Noise(),
                    spread * 0.3 * (random.NextDouble() - 0.5),
                    Noise(),
                    (r, a) => scenarios[(((r * n) + variable) * s) + scenario] = a
                );
            }
        }

        double total = Enumerable.Range(0, n).Sum(i => upper[i] * volume[i]);
        double least = total * Uniform(0, 0.5);
        bool limited = random.Next(3) > 0;
        double[] price =
        [
            .. Enumerable.Range(0, n).Select(_ => random.Next(3) == 0 ? 0.0 : random.Next(0, 6)),
        ];
        double[] use = [.. volume.Select(v => -v)];
        double[] third = [.. Enumerable.Range(0, n).Select(_ => Math.Round(Uniform(-3, 3), 1))];
        double[][] objectives = random.Next(3) switch
        {
            0 => [price],
            1 => [price, use],
            _ => [price, third, use],
        };
        return new ChanceProblem
        {
            Lower = lower,
            Upper = upper,
            Objectives = objectives,
            FreeSlopes = slopes,
            Nominal = nominal,
            ScenarioCount = s,
            Scenarios = scenarios,
            Chance = random.Next(5) == 0 ? 1 : Uniform(0, 1),
            FreeMaximum = random.Next(5) == 0 ? 0 : Uniform(1, 200),
            FreePreferred = Uniform(0, 100),
            LimitCoefficients = limited ? [.. volume, .. use] : [],
            Limits = limited ? [Math.Max(least, total * Uniform(0.3, 1)), -least] : [],
        };
    }
}
