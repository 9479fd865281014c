using Heapwright.App.Library;
using Heapwright.Core.Materials;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;
using Heapwright.Numerics.Search;

namespace Heapwright.Benchmarks.RecipeSearch;

/// <summary>
/// Recipes from our own library: 12 of its materials, each in whole barrows or buckets, each known as well as the library knows it or
/// better by measuring; C:N 25–35, moisture 50–60 %, jointly in 90 % of 200 scenarios; 600–1000 l filled at 0.85; least
/// price of what is bought plus a little for every unit that is carried.
/// </summary>
internal static class GardenInstances
{
    private const double Fill = 0.85;
    private const double Barrow = 90;
    private const double Bucket = 13;
    private const int Rows = 4;

    // The larder of a garden: what comes in barrows, and what in buckets.
    private static readonly string[] BarrowGroups =
    [
        "grass",
        "garden",
        "leaves",
        "straw_hay",
        "manure",
        "wood",
        "paper",
    ];

    /// <summary>The instance of a seed.</summary>
    /// <param name="seed">The seed.</param>
    /// <param name="spread">What is left of the spread of the library, 1 is all of it; the unit of the scale is a standard score.</param>
    /// <param name="materials">Number of materials, even.</param>
    /// <param name="scenarios">Number of scenarios.</param>
    internal static ChanceProblem Make(
        int seed,
        double spread,
        int materials = 12,
        int scenarios = 200
    )
    {
        var random = new Random(seed);
        Material[] usable = Usable();
        Material[] greens = Draw(random, usable, m => m.CountsAs == "green", materials / 2);
        Material[] browns = Draw(random, usable, m => m.CountsAs != "green", materials / 2);
        Material[] chosen = [.. greens, .. browns];
        int n = chosen.Length;
        var nominal = new double[Rows * n];
        var sampled = new double[Rows * n * scenarios];
        var volume = new double[n];
        var most = new double[n];
        var cost = new double[n];
        for (int i = 0; i < n; i++)
        {
            Material m = chosen[i];
            bool barrow = BarrowGroups.Contains(m.Group, StringComparer.Ordinal);
            volume[i] = barrow ? Barrow : Bucket;
            most[i] = barrow ? random.Next(2, 9) : random.Next(2, 13);

            // A third is bought; fetching and mixing in one unit counts too, by how far off and how stubborn it is.
            bool bought = random.Next(3) == 0;
            double price = barrow ? random.Next(4, 25) / 2.0 : random.Next(2, 13) / 2.0;
            double use = barrow ? random.Next(2, 13) / 10.0 : random.Next(1, 4) / 10.0;
            cost[i] = (bought ? price : 0) + use;
            Fills(m, volume[i], random, spread, i, n, scenarios, nominal, sampled);
        }

        return new ChanceProblem
        {
            Lower = new double[n],
            Upper = most,
            Objectives = [cost],
            FreeSlopes = [0, 0, 0.5, -0.4],
            Nominal = nominal,
            ScenarioCount = scenarios,
            Scenarios = sampled,
            Chance = 0.9,
            FreeMaximum = 1000,
            LimitCoefficients = [.. volume, .. volume.Select(v => -v)],
            Limits = [1000 / Fill, -600 / Fill],
        };
    }

    private static Material[] Usable() =>
        [
            .. LibraryReader.Library.All.Where(m =>
                m.Advice is "may" or "with_care"
                && m.CountsAs is "green" or "brown" or "structure"
                && m.Properties[MaterialProperty.Nitrogen] is not null
                && m.Properties[MaterialProperty.Carbon] is not null
                && m.Properties[MaterialProperty.Moisture] is not null
                && m.Properties[MaterialProperty.BulkDensity] is not null
            ),
        ];

    private static Material[] Draw(
        Random random,
        Material[] from,
        Func<Material, bool> fits,
        int count
    )
    {
        Material[] all = [.. from.Where(fits)];
        random.Shuffle(all);
        return all[..count];
    }

    private static void Fills(
        Material m,
        double litres,
        Random random,
        double spread,
        int i,
        int n,
        int scenarios,
        double[] nominal,
        double[] sampled
    )
    {
        var values = new double[PropertyFacts.Count];
        Array.Fill(values, double.NaN);
        MaterialProperty[] known = [.. m.Properties.Known()];
        void Put(double[] to, int scale, int at)
        {
            MassBalance b = MassBalance.Of(double.NaN, litres, values);
            double[] row =
            [
                b.Carbon - (25 * b.Nitrogen),
                (35 * b.Nitrogen) - b.Carbon,
                b.Water - (0.5 * b.WetMass),
                (0.6 * b.WetMass) - b.Water,
            ];
            for (int r = 0; r < Rows; r++)
            {
                to[(((r * n) + i) * scale) + at] = row[r];
            }
        }

        foreach (MaterialProperty p in known)
        {
            values[(int)p] = m.Properties[p]!.Value.Typical;
        }

        Put(nominal, 1, 0);
        for (int s = 0; s < scenarios; s++)
        {
            foreach (MaterialProperty p in known)
            {
                Spread value = m.Properties[p]!.Value;
                values[(int)p] = value.AtScore(spread * Normal(random), PropertyFacts.Scale(p));
            }

            Put(sampled, scenarios, s);
        }
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble()))
        * Math.Cos(2 * Math.PI * random.NextDouble());
}
