using System.Text.Json.Nodes;

namespace Heapwright.Validation.Properties;

/// <summary>
/// A second opinion on the ranges of a mixture: 200,000 plain random draws and sums written here from the definitions,
/// without a line of the program. Of the draws 5, 50 and 95 % must lie below the three numbers of the answer.
/// </summary>
public class PlainSamplingTests(ITestOutputHelper output)
{
    private const int Draws = 200_000;

    private const string Question = """
        {"ingredients":[
          {"name":"zzq wet","carbon_pct_db":{"low":38,"typical":43,"high":46},"nitrogen_pct_db":{"low":1.8,"typical":2.6,"high":3.9},
           "moisture_pct_wb":{"low":66,"typical":80,"high":87},"bulk_density_kg_m3":{"low":120,"typical":210,"high":330},
           "ash_pct_db":{"low":8,"typical":13,"high":22},"amount":{"value":3,"unit":"barrow"}},
          {"name":"zzq dry","carbon_pct_db":{"low":44,"typical":47,"high":49},"nitrogen_pct_db":{"low":0.3,"typical":0.55,"high":1.1},
           "moisture_pct_wb":{"low":9,"typical":14,"high":30},"bulk_density_kg_m3":{"low":40,"typical":70,"high":130},
           "ash_pct_db":{"low":3,"typical":6,"high":9},"amount":{"value":{"low":3,"typical":4,"high":6},"unit":"barrow"}}],
         "water_l":{"low":10,"typical":20,"high":40},"mixing_volume_factor":{"low":0.7,"typical":0.8,"high":0.95},
         "containers":{"barrow":{"l":{"low":60,"typical":85,"high":130}}},"seed":SEED}
        """;

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Mix_UncertainEverything_AgreesWithPlainRandomDraws(int seed)
    {
        var answer = Ask.Mix(
            Question.Replace(
                "SEED",
                seed.ToString(System.Globalization.CultureInfo.InvariantCulture),
                StringComparison.Ordinal
            )
        ).Json;
        var draws = Draw(new Random(20260101));

        // Three standard errors of a share from 1,024 and from 200,000 points together.
        static double Error(double share) =>
            3 * Math.Sqrt(share * (1 - share) * ((1 / 1024.0) + (1.0 / Draws)));
        foreach (var (field, values) in draws)
        {
            double Below(JsonNode? number) =>
                (double)values.Count(v => v < number.Number()) / values.Length;
            var (low, middle, high) = (
                Below(answer[field]!["low"]),
                Below(answer[field]!["typical"]),
                Below(answer[field]!["high"])
            );
            output.WriteLine($"{field}: {low:P2} {middle:P2} {high:P2}");
            Assert.Equal(0.05, low, Error(0.05));
            Assert.Equal(0.50, middle, Error(0.50));
            Assert.Equal(0.95, high, Error(0.95));
        }
    }

    private static Dictionary<string, double[]> Draw(Random random)
    {
        var all = new Dictionary<string, double[]>(StringComparer.Ordinal);
        foreach (
            var field in (string[])
                [
                    "carbon_nitrogen_ratio",
                    "moisture_pct_wb",
                    "wet_mass_kg",
                    "dry_mass_kg",
                    "nitrogen_kg",
                    "bulk_density_kg_m3",
                    "free_air_space_pct",
                ]
        )
        {
            all[field] = new double[Draws];
        }

        for (var i = 0; i < Draws; i++)
        {
            var barrow = TwoPieces.Positive(random, 60, 85, 130);
            var wet = new Sums();
            wet.Add(
                3 * barrow,
                TwoPieces.Positive(random, 120, 210, 330),
                TwoPieces.Percent(random, 66, 80, 87),
                TwoPieces.Positive(random, 38, 43, 46),
                TwoPieces.Positive(random, 1.8, 2.6, 3.9),
                TwoPieces.Percent(random, 8, 13, 22)
            );
            wet.Add(
                TwoPieces.Positive(random, 3, 4, 6) * barrow,
                TwoPieces.Positive(random, 40, 70, 130),
                TwoPieces.Percent(random, 9, 14, 30),
                TwoPieces.Positive(random, 44, 47, 49),
                TwoPieces.Positive(random, 0.3, 0.55, 1.1),
                TwoPieces.Percent(random, 3, 6, 9)
            );
            wet.AddWater(TwoPieces.Positive(random, 10, 20, 40));
            var filled = wet.Litres * TwoPieces.Positive(random, 0.7, 0.8, 0.95);
            all["carbon_nitrogen_ratio"][i] = wet.Carbon / wet.Nitrogen;
            all["moisture_pct_wb"][i] = wet.Moisture;
            all["wet_mass_kg"][i] = wet.Wet;
            all["dry_mass_kg"][i] = wet.Dry;
            all["nitrogen_kg"][i] = wet.Nitrogen;
            all["bulk_density_kg_m3"][i] = 1000 * wet.Wet / filled;
            all["free_air_space_pct"][i] = wet.Air(filled);
        }

        return all;
    }
}
