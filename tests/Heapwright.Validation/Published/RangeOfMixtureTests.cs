using System.Text.Json.Nodes;
using Heapwright.App.Library;
using Heapwright.Validation.Properties;

namespace Heapwright.Validation.Published;

/// <summary>The published ranges, asked for as a user would: just inside is good, just outside is not.</summary>
public class RangeOfMixtureTests
{
    // Cooperband 2002, Table 1 (printed): C:N 25 to 35 preferred.
    [Theory]
    [InlineData(24.9, "low")]
    [InlineData(25.1, "good")]
    [InlineData(34.9, "good")]
    [InlineData(35.1, "high")]
    public void Cooperband_CarbonNitrogen_25To35IsGood(double ratio, string status) =>
        Judged("carbon_nitrogen_ratio", ratio: ratio, status: status, low: 25, high: 35);

    // The Composting Handbook 2022, Table 4.2 (printed): moisture 50 to 60 % preferred.
    [Theory]
    [InlineData(49.9, "low")]
    [InlineData(50.1, "good")]
    [InlineData(59.9, "good")]
    [InlineData(60.1, "high")]
    public void CompostingHandbook_Moisture_50To60IsGood(double moisture, string status) =>
        Judged("moisture_pct_wb", moisture: moisture, status: status, low: 50, high: 60);

    // NRAES-54 (from memory): below 640 kg/m3, 1,100 lb/yd3 rounded.
    [Theory]
    [InlineData(639, "good")]
    [InlineData(641, "high")]
    public void Nraes_BulkDensity_Below640IsGood(double density, string status) =>
        Judged("bulk_density_kg_m3", density: density, status: status, low: null, high: 640);

    // Technical Note 24, Composting Basics (printed): 35 to 60 % air is good. 55 % moisture, 20 % ash: at 791 kg/m3 the air is
    // 1 - 791 (0.55/1000 + 0.45 (0.8/1600 + 0.2/2500)) = 35.85 %, at 811 kg/m3 34.2 % (computed by the formula of Van Ginkel
    // 1999, from memory).
    [Theory]
    [InlineData(791, "good")]
    [InlineData(811, "low")]
    public void TechnicalNote_Air_Above35IsGood(double density, string status) =>
        Judged(
            "free_air_space_pct",
            density: density,
            ash: 20,
            moisture: 55,
            status: status,
            low: 35,
            high: null
        );

    // Every range that a verdict quotes must stand in the list of references.
    [Fact]
    public void Verdicts_Sources_StandInTheReferences()
    {
        var references = DataFiles.Text("references.bib");
        var strawy = Mixed(30, 55, 250, 8, "wheat_straw");
        foreach (
            var verdict in Mixed(30, 55, 250, 8)["verdicts"]!
                .AsArray()
                .Concat(strawy["verdicts"]!.AsArray())
        )
        {
            var source = verdict!["source"].Word();
            Assert.True(
                references.Contains($"{{{source},", StringComparison.Ordinal),
                $"{source} is not in references.bib"
            );
        }
    }

    private static void Judged(
        string quantity,
        string status,
        double? low,
        double? high,
        double ratio = 30,
        double moisture = 55,
        double density = 250,
        double ash = 8
    )
    {
        var verdict = Mixed(ratio, moisture, density, ash)["verdicts"]!
            .AsArray()
            .Single(v => v!["quantity"].Word() == quantity)!;
        Assert.Equal(status, verdict["status"].Word());
        Assert.Equal(low, verdict["low"]?.Number());
        Assert.Equal(high, verdict["high"]?.Number());
        Assert.Equal(status == "good" ? 1 : 0, verdict["chance_good"].Number());
        Assert.NotEmpty(verdict["why"].Word());
    }

    private static JsonObject Mixed(
        double ratio,
        double moisture,
        double density,
        double ash,
        string? more = null
    )
    {
        var straw = more is null
            ? ""
            : $",{{\"material\":\"{more}\",\"amount\":{{\"value\":30,\"unit\":\"m3\"}}}}";
        return Ask.Mix(
            $"{{\"ingredients\":[{{\"name\":\"zzq\",\"amount\":{{\"value\":1,\"unit\":\"m3\"}},\"carbon_pct_db\":42,\"carbon_nitrogen_ratio\":{Known.Text(ratio)},\"moisture_pct_wb\":{Known.Text(moisture)},\"bulk_density_kg_m3\":{Known.Text(density)},\"ash_pct_db\":{Known.Text(ash)}}}{straw}]}}"
        ).Json;
    }
}
