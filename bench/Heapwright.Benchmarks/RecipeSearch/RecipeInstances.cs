using Heapwright.Numerics.Search;

namespace Heapwright.Benchmarks.RecipeSearch;

/// <summary>
/// Random recipes: 12 materials in whole units, C:N 25–35, moisture 50–60 %, free air space at least 35 %, 600–1000 l filled
/// at a factor of 0.85, jointly in 90 % of 200 scenarios. Ranges of the materials are estimates of what gardens hold.
/// </summary>
internal static class RecipeInstances
{
    internal const int Materials = 12;
    internal const int Scenarios = 200;
    internal const double Chance = 0.9;
    private const int Rows = 5;
    private const double Fill = 0.85;

    /// <summary>The instance of a seed: least cost first, then the most used.</summary>
    internal static ChanceProblem Make(
        int seed,
        int materials = Materials,
        int scenarios = Scenarios,
        int most = 10
    )
    {
        var random = new Random(seed);
        int n = materials;
        var nominal = new double[Rows * n];
        var sampled = new double[Rows * n * scenarios];
        var volume = new double[n];
        var price = new double[n];
        var preferred = new double[n];
        for (int i = 0; i < n; i++)
        {
            var m = Material.Draw(random);
            volume[i] = m.Litres;
            price[i] = 2 * i < n ? 0 : random.Next(2, 31) / 2.0;
            double mass = m.Litres / 1000 * m.Density;
            preferred[i] = mass * (0.55 - m.Moisture) / 0.45;
            for (int r = 0; r < Rows; r++)
            {
                nominal[(r * n) + i] = m.Row(r);
            }

            for (int s = 0; s < scenarios; s++)
            {
                Material varied = m.Vary(random);
                for (int r = 0; r < Rows; r++)
                {
                    sampled[(((r * n) + i) * scenarios) + s] = varied.Row(r);
                }
            }
        }

        double[] use = [.. volume.Select(v => -v)];
        return new ChanceProblem
        {
            Lower = new double[n],
            Upper = [.. Enumerable.Repeat((double)most, n)],
            Objectives = [price, use],
            FreeSlopes = [0, 0, 0.5, -0.4, -1],
            Nominal = nominal,
            ScenarioCount = scenarios,
            Scenarios = sampled,
            Chance = Chance,
            FreeMaximum = 1000,
            FreePreferredSlopes = preferred,
            LimitCoefficients = [.. volume, .. use],
            Limits = [1000 / Fill, -600 / Fill],
        };
    }

    private sealed record Material(
        double Litres,
        double Nitrogen,
        double Carbon,
        double Moisture,
        double Density,
        double Ash
    )
    {
        internal static Material Draw(Random random)
        {
            double Uniform(double a, double b) => a + ((b - a) * random.NextDouble());
            return new Material(
                random.Next(10, 91),
                0.001 * Math.Pow(60, random.NextDouble()),
                Uniform(0.38, 0.50),
                Uniform(0.10, 0.85),
                60 * Math.Pow(700.0 / 60, random.NextDouble()),
                Uniform(0.03, 0.25)
            );
        }

        /// <summary>Nitrogen log-normal with sd 0.2, density with 0.15, moisture logit-normal with a spread of about 5 points.</summary>
        internal Material Vary(Random random)
        {
            double logit =
                Math.Log(Moisture / (1 - Moisture))
                + (0.05 / (Moisture * (1 - Moisture)) * Normal(random));
            return this with
            {
                Nitrogen = Nitrogen * Math.Exp(0.2 * Normal(random)),
                Density = Density * Math.Exp(0.15 * Normal(random)),
                Moisture = 1 / (1 + Math.Exp(-logit)),
            };
        }

        internal double Row(int row)
        {
            double mass = Litres / 1000 * Density;
            double water = mass * Moisture;
            double dry = mass - water;
            return row switch
            {
                0 => dry * (Carbon - (25 * Nitrogen)),
                1 => dry * ((35 * Nitrogen) - Carbon),
                2 => water - (0.5 * mass),
                3 => (0.6 * mass) - water,
                _ => (0.65 * Fill * Litres) - (dry * ((Ash / 2.5) + ((1 - Ash) / 1.6))) - water,
            };
        }

        private static double Normal(Random random) =>
            Math.Sqrt(-2 * Math.Log(1 - random.NextDouble()))
            * Math.Cos(2 * Math.PI * random.NextDouble());
    }
}
