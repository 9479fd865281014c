using System.Diagnostics;
using System.Globalization;
using Heapwright.App.Library;
using Heapwright.Core.Amounts;
using Heapwright.Core.Materials;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;
using Heapwright.Numerics.Sampling;

namespace Heapwright.Benchmarks.Mixing;

/// <summary>
/// The mixture of five materials over 1024 sample points against a plain loop over the same samples, which does nothing but the sums:
/// the price of everything the library does around them.
/// </summary>
internal static class MixBenchmark
{
    private const int Rounds = 31;
    private const int PerRound = 20;

    private static readonly (string Id, double Barrows)[] Recipe =
    [
        ("grass_clippings_fresh", 3),
        ("leaves_mixed_dry", 4),
        ("wheat_straw", 2),
        ("leaves_mixed_shredded", 1),
        ("comfrey_fresh", 1),
    ];

    /// <summary>Runs and prints; false if the answers differ.</summary>
    internal static bool Run()
    {
        MixtureQuestion question = Question();
        Mixture mixture = Mixture.Of(question);
        double[] ratios = PlainLoop(mixture, out double[] moistures);
        double worst = 0;
        for (int i = 0; i < ratios.Length; i++)
        {
            MixtureState state = mixture.Cases[i];
            worst = Math.Max(worst, Math.Abs((ratios[i] / state.CarbonNitrogenRatio) - 1));
            worst = Math.Max(worst, Math.Abs((moistures[i] / state.Moisture) - 1));
        }

        var whole = new List<double>();
        var drawn = new List<double>();
        var plain = new List<double>();
        for (int round = 0; round < Rounds; round++)
        {
            whole.Add(Time(() => Mixture.Of(question)));
            drawn.Add(Time(() => Draw(question)));
            plain.Add(Time(() => PlainLoop(mixture, out _)));
        }

        double[] ratio = [.. whole.Zip(plain, (a, b) => a / b).Order()];
        double[] median =
        [
            .. new[] { whole, drawn, plain }.Select(t => t.Order().ElementAt(Rounds / 2)),
        ];
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"mix of {Recipe.Length} materials, {ratios.Length} points; largest relative difference of C:N and moisture {worst:E1}"
            )
        );
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"median of {Rounds} interleaved rounds: whole mixture {1000 * median[0]:F0} us, of which drawing the samples {1000 * median[1]:F0} us; plain scalar loop over the drawn samples {1000 * median[2]:F0} us; ratio {ratio[Rounds / 2]:F1}"
            )
        );
        return worst < 1e-12;
    }

    private static void Draw(MixtureQuestion question)
    {
        var points = new QuasiRandomSet(question.PointCount, question.Seed);
        foreach (Ingredient ingredient in question.Ingredients)
        {
            IngredientSample.Draw(ingredient, points);
        }
    }

    private static double Time(Action action)
    {
        var clock = Stopwatch.StartNew();
        for (int k = 0; k < PerRound; k++)
        {
            action();
        }

        return clock.Elapsed.TotalMilliseconds / PerRound;
    }

    private static MixtureQuestion Question() =>
        new()
        {
            Ingredients =
            [
                .. Recipe.Select(r =>
                {
                    Material m =
                        LibraryReader.Library.Find(r.Id)
                        ?? throw new InvalidOperationException($"{r.Id} is not in the library.");
                    return new Ingredient
                    {
                        Name = m.Name,
                        Material = m,
                        Properties = m.Properties,
                        Amount = Spread.Exact(r.Barrows),
                        Unit = UnitSize.OfVolume("barrow", Spread.Of(60, 90, 125), true),
                    };
                }),
            ],
        };

    /// <summary>Carbon over nitrogen and moisture in every case from the samples that were drawn, in the plainest way.</summary>
    private static double[] PlainLoop(Mixture mixture, out double[] moistures)
    {
        int points = mixture.Cases.Count;
        var ratios = new double[points];
        moistures = new double[points];
        for (int i = 0; i < points; i++)
        {
            double carbon = 0;
            double nitrogen = 0;
            double wet = 0;
            double dry = 0;
            foreach (IngredientSample part in mixture.Parts)
            {
                double amount = part.Amount[i];
                MassBalance unit = part.PerUnit[i];
                carbon += unit.Carbon * amount;
                nitrogen += unit.Nitrogen * amount;
                wet += unit.WetMass * amount;
                dry += unit.DryMass * amount;
            }

            ratios[i] = carbon / nitrogen;
            moistures[i] = 100 * (1 - (dry / wet));
        }

        return ratios;
    }
}
