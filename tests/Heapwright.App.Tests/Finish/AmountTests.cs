using System.Text;
using Heapwright.App.Contract;
using Heapwright.Core.FinishedCompost;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Tests.Finish;

/// <summary>Yield, nutrients and spreading, worked out by hand beside each.</summary>
public class AmountTests
{
    // WE: ash 10 % to 25 % is a loss of 60 % of the dry mass and 66.7 % of the organic matter (mass balance).
    [Theory]
    [InlineData("""{"ash":{"before_pct_db":10,"after_pct_db":25}}""")]
    [InlineData("""{"ash_before_pct_db":10,"ash_after_pct_db":25}""")]
    [InlineData("""{"start":{"ash_pct_db":10},"end":{"organic_matter_pct_db":75}}""")]
    [InlineData("""{"ash":{"before_pct_db":10},"lab":{"ash_pct_db":25}}""")]
    public void Ash_BeforeAndAfter_GivesTheLosses(string question)
    {
        var yield = Asked.Json(question)["yield"]!;

        yield["dry_matter_loss_pct"].IsExactly(60, 1e-9);
        yield["organic_matter_loss_pct"].IsExactly(66.6667, 5e-5);
        yield["dry_mass_pct_of_start"].IsExactly(40, 1e-9);
        Assert.Null(yield["mass_kg"]);
    }

    // 100 kg at 60 % water are 40 kg dry; a loss of 60 % leaves 16 kg, at 50 % water 32 kg, at 640 kg/m³ 50 l. Of 200 l
    // that is a quarter; of 100 kg about a third.
    [Fact]
    public void Ash_WithTheMassAtTheStart_GivesTheYield()
    {
        var yield = Asked.Json(
            """{"ash":{"before_pct_db":10,"after_pct_db":25},"start":{"mass_kg":100,"moisture_pct_wb":60,"volume_l":200},"end":{"moisture_pct_wb":50,"bulk_density_kg_m3":640}}"""
        )["yield"]!;

        yield["dry_mass_kg"].IsExactly(16, 1e-9);
        yield["mass_kg"].IsExactly(32, 1e-9);
        yield["volume_l"].IsExactly(50, 1e-9);
        yield["volume_pct_of_start"].IsExactly(25, 1e-9);
        yield["mass_pct_of_start"].IsExactly(32, 1e-9);
        Assert.Equal("ash", yield["from"]!["mass"]!.GetValue<string>());
    }

    // Nothing was weighed at the end: the usual figures of mass and water, taken alone, would let dry matter grow.
    [Fact]
    public void Loss_FromUsualFiguresOnly_IsNeverAGain()
    {
        var yield = Asked.Json(
            """{"ingredients":[{"material":"grass_clippings_fresh","amount":{"value":4,"unit":"wheelbarrow"}},{"material":"leaves_mixed_dry","amount":{"value":6,"unit":"wheelbarrow"}}],"age_days":180}"""
        )["yield"]!;

        foreach (var loss in new[] { "dry_matter_loss_pct", "carbon_loss_pct" })
        {
            Assert.InRange(yield[loss]!["low"]!.GetValue<double>(), 0, 100);
        }

        Assert.InRange(yield["dry_mass_pct_of_start"]!["high"]!.GetValue<double>(), 0, 100);
    }

    // 400 l at 590 (475 to 710) kg/m³ are 236 kg, half (35 to 65 %) of 400 kg are 200 kg. Deviations of the logarithms:
    // ln(710/475)/3.29 = 0.1222 and ln(65/35)/3.29 = 0.1882, so weights 67.0 and 28.2:
    // exp((67.0 × ln 236 + 28.2 × ln 200) / 95.2) = 224.7 kg, if the
    // spreads were even; they are skewed (50 is nearer to 65 than to 35), which may move the middle by some 2 %.
    [Fact]
    public void Volume_NotWeighed_IsJoinedWithTheMassAtTheStart()
    {
        var answer = Asked.Json(
            """{"start":{"mass_kg":400,"moisture_pct_wb":50},"end":{"volume_l":400}}"""
        );

        Assert.Equal(224.7, answer["yield"]!["mass_kg"].Typical(), 0.02 * 224.7);
        Assert.Contains(
            "were joined",
            answer["assumptions"]!.ToJsonString(),
            StringComparison.Ordinal
        );
    }

    // 60 kg dry at 40 % of water are 100 kg, in 250 l: 400 kg/m³. What is measured counts before it.
    [Theory]
    [InlineData("{}", 100, 250, "simulated")]
    [InlineData("""{"end":{"volume_l":200}}""", 100, 200, "simulated")]
    [InlineData("""{"end":{"moisture_pct_wb":50}}""", 120, 250, "simulated")]
    [InlineData("""{"end":{"mass_kg":90}}""", 90, 250, "measured")]
    [InlineData("""{"end":{"volume_l":200,"bulk_density_kg_m3":600}}""", 120, 200, "volume")]
    public void Simulation_OfTheHeap_GivesWhatWasNotMeasured(
        string question,
        double mass,
        double volume,
        string from
    )
    {
        var yield = FinishAnswers
            .Answer(
                Input.Read(Encoding.UTF8.GetBytes(question), "finish.json"),
                simulated: MatterGiven.None with
                {
                    DryMass = Spread.Exact(60),
                    Moisture = Spread.Exact(40),
                    Volume = Spread.Exact(250),
                }
            )
            .Json["yield"]!;

        yield["mass_kg"].IsExactly(mass, 1e-6);
        yield["volume_l"].IsExactly(volume, 1e-6);
        Assert.Equal(from, yield["from"]!["mass"]!.GetValue<string>());
    }

    // A volume that would weigh three times as much: whatever it weighs, no dry matter was made.
    [Fact]
    public void Volume_TooLargeForWhatWentIn_LeavesNoMoreDryMatterThanThere()
    {
        var yield = Asked.Json(
            """{"start":{"mass_kg":100,"moisture_pct_wb":50},"end":{"volume_l":600}}"""
        )["yield"]!;

        Assert.InRange(yield["dry_mass_kg"]!["high"]!.GetValue<double>(), 49, 50 + 1e-9);
        Assert.InRange(yield["dry_matter_loss_pct"]!["low"]!.GetValue<double>(), -1e-9, 100);
    }

    [Fact]
    public void Ash_ThatWentDown_IsDoubtedAndGivesNoLoss()
    {
        var yield = Asked.Json("""{"ash":{"before_pct_db":25,"after_pct_db":10}}""")["yield"]!;

        Assert.Null(yield["dry_matter_loss_pct"]);
        Assert.Contains(
            "went down",
            Assert.Single(yield["doubts"]!.AsArray())!.GetValue<string>(),
            StringComparison.Ordinal
        );
    }

    // By ash 40 % is left, by weight 30 of 40 kg: soil in the sample, or an error.
    [Fact]
    public void Ash_AgainstTheScales_IsNamed() =>
        Assert.Contains(
            Asked.Json(
                """{"ash":{"before_pct_db":10,"after_pct_db":25},"start":{"dry_mass_kg":40},"end":{"dry_mass_kg":30,"mass_kg":60}}"""
            )["yield"]!["doubts"]!.AsArray(),
            d => d!.GetValue<string>().Contains("By ash 40 %", StringComparison.Ordinal)
        );

    // Printed: the product is 40-60 % of the original volume.
    [Fact]
    public void Volume_AtTheStartAlone_ShrinksAsIsUsual()
    {
        var yield = Asked.Json("""{"start":{"volume_m3":1}}""")["yield"]!;

        Assert.Equal("usual", yield["from"]!["volume"]!.GetValue<string>());
        Assert.InRange(yield["volume_l"]!["low"]!.GetValue<double>(), 395, 405);
        Assert.InRange(yield["volume_l"].Typical(), 498, 502);
        Assert.InRange(yield["volume_l"]!["high"]!.GetValue<double>(), 595, 605);
    }

    [Fact]
    public void Recipe_GivesTheStart()
    {
        // 100 kg at 60 % water with 20 % ash and 2 % N; ash after 40 %: half of the 40 kg dry is left.
        var answer = Asked.Json(
            """{"ingredients":[{"name":"stuff","carbon_pct_db":44,"nitrogen_pct_db":2,"moisture_pct_wb":60,"ash_pct_db":20,"bulk_density_kg_m3":400,"amount":{"value":100,"unit":"kg"}}],"lab":{"ash_pct_db":40,"nitrogen_pct_db":3,"moisture_pct_wb":50}}"""
        );

        answer["yield"]!["dry_mass_kg"].IsExactly(20, 1e-9);
        answer["yield"]!["mass_kg"].IsExactly(40, 1e-9);
        // 0.8 kg N at the start, 0.6 kg at the end.
        answer["yield"]!["nitrogen_loss_pct"].IsExactly(25, 1e-9);
        answer["nutrients"]!["nitrogen_kg"].IsExactly(0.6, 1e-9);
        Assert.Equal("measured", answer["nutrients"]!["from"]!["nitrogen"]!.GetValue<string>());
    }

    // P = 0.4364 P2O5, K = 0.8301 K2O (printed).
    [Fact]
    public void Report_InOxides_IsTheSameAsInElements()
    {
        var oxides = Asked.Json("""{"lab":{"p2o5_pct_db":1,"k2o_pct_db":2}}""")["nutrients"]!;
        var elements = Asked.Json(
            """{"lab":{"phosphorus_pct_db":0.4364,"potassium_pct_db":1.6602}}"""
        )["nutrients"]!;

        oxides["phosphorus_pct_db"].IsExactly(0.4364, 1e-12);
        oxides["potassium_pct_db"].IsExactly(1.6602, 1e-12);
        elements["p2o5_pct_db"].IsExactly(1, 1e-9);
        elements["k2o_pct_db"].IsExactly(2, 1e-9);
    }

    [Theory]
    [InlineData("""{"lab":{"nitrogen_pct_db":2,"carbon_pct_db":30}}""", 15)]
    [InlineData("""{"lab":{"nitrogen_pct_db":2,"organic_matter_pct_db":54}}""", 15)] // % C = % VS / 1.8 (printed)
    [InlineData("""{"lab":{"carbon_pct_db":30,"carbon_nitrogen_ratio":12}}""", 12)]
    [InlineData("""{"carbon_nitrogen_ratio":18,"lab":{"nitrogen_pct_db":1}}""", 18)]
    public void Ratio_FollowsFromWhatIsGiven(string question, double ratio) =>
        Asked.Json(question)["nutrients"]!["carbon_nitrogen_ratio"].IsExactly(ratio, 1e-9);

    // Three printed sources: 5-10, 10-25, 10-15 %; above 3 % N the first says above 10.
    [Theory]
    [InlineData("2", 5, 25)]
    [InlineData("3", 5, 25)]
    [InlineData("3.1", 10, 25)]
    public void FirstYear_IsTheRangeOverTheSources(string nitrogen, double low, double high)
    {
        var share = Asked.Json($$$"""{"lab":{"nitrogen_pct_db":{{{nitrogen}}}}}""")["nutrients"]![
            "first_year_nitrogen_pct"
        ]!;

        Assert.Equal(low, share["low"]!.GetValue<double>(), 0.1);
        Assert.Equal(high, share["high"]!.GetValue<double>(), 0.1);
    }

    // A square metre at 1 cm is 10 l, at 500 kg/m³ 5 kg, at 40 % water 3 kg dry, at 2 % N 60 g, of which a tenth is 6 g.
    [Fact]
    public void Bed_OfKnownCompost_IsWorkedOutExactly()
    {
        var answer = Asked.Json(
            """{"end":{"bulk_density_kg_m3":500,"moisture_pct_wb":40},"lab":{"nitrogen_pct_db":2,"phosphorus_pct_db":0.5,"potassium_pct_db":1},"first_year_nitrogen_pct":10,"containers":{"wheelbarrow":50},"manure":false,"beds":[{"name":"A","area_m2":10,"depth_cm":1,"nitrogen_need_g_m2":6},{"length_m":4,"width_m":2.5,"depth_cm":2,"nitrogen_need_g_m2":12.1}]}"""
        );
        var (a, b) = (answer["apply"]!["beds"]![0]!, answer["apply"]!["beds"]![1]!);

        a["volume_l"].IsExactly(100, 1e-9);
        a["mass_kg"].IsExactly(50, 1e-9);
        a["wheelbarrows"].IsExactly(2, 1e-9);
        a["nitrogen_g_m2"].IsExactly(60, 1e-9);
        a["first_year_nitrogen_g_m2"].IsExactly(6, 1e-9);
        a["first_year_nitrogen_kg"].IsExactly(0.06, 1e-9);
        a["phosphorus_g_m2"].IsExactly(15, 1e-9);
        a["potassium_g_m2"].IsExactly(30, 1e-9);
        Assert.Equal(1, a["chance_nitrogen_enough"]!.GetValue<double>());
        b["area_m2"].IsExactly(10, 1e-9);
        Assert.Equal(0, b["chance_nitrogen_enough"]!.GetValue<double>());
        answer["apply"]!["volume_l"].IsExactly(300, 1e-9);
        answer["apply"]!["mass_kg"].IsExactly(150, 1e-9);
        answer["apply"]!["area_m2"].IsExactly(20, 1e-9);
        answer["apply"]!["depth_cm"].IsExactly(1.5, 1e-9);
        answer["apply"]!["first_year_nitrogen_kg"].IsExactly(0.18, 1e-9);
    }

    // Printed: 1 yd³ (764.555 l) at 1 in covers 324 ft² (30.1006 m²).
    [Fact]
    public void Batch_WithoutBeds_SaysHowFarItGoes()
    {
        var apply = Asked.Json("""{"end":{"volume_l":764.554857984},"apply":{"depth_cm":2.54}}""")[
            "apply"
        ]!;

        apply["area_m2"].IsExactly(30.1006, 5e-5);
        apply["covers"]![0]!["area_m2"].IsExactly(30.1006, 5e-5);
        apply["covers"]![2]!["area_m2"].IsExactly(10.0335, 5e-5); // 108 ft² at 3 in
    }

    [Fact]
    public void Beds_WithoutADepth_ShareWhatIsLeft()
    {
        // 400 l, of which the first bed takes 100; 300 l on 10 m² are 3 cm.
        var apply = Asked.Json(
            """{"end":{"volume_l":400},"beds":[{"area_m2":5,"depth_cm":2},{"area_m2":4},{"area_m2":6}]}"""
        )["apply"]!;

        apply["beds"]![1]!["depth_cm"].IsExactly(3, 1e-9);
        apply["beds"]![2]!["volume_l"].IsExactly(180, 1e-9);
        apply["left_over_l"].IsExactly(0, 1e-9);
        apply["short_l"].IsExactly(0, 1e-9);
    }

    [Theory]
    [InlineData(2, 300.0, 0.0)] // 100 of 400 l used
    [InlineData(10, 0.0, 100.0)] // 500 l asked
    public void Beds_SayWhatIsLeftOrShort(double depth, double left, double lacking)
    {
        var apply = Asked.Json(
            FormattableString.Invariant(
                $$"""{"end":{"volume_l":400},"beds":[{"area_m2":5,"depth_cm":{{depth}}}]}"""
            )
        )["apply"]!;

        apply["left_over_l"].IsExactly(left, 1e-9);
        apply["short_l"].IsExactly(lacking, 1e-9);
    }

    // North Carolina (printed): no more than 3 in (7.62 cm) tilled to 6 in, or half by volume; another 80 % dilution.
    [Theory]
    [InlineData("7.62", "15.24", "most_depth_cm", "within")]
    [InlineData("7.63", "15.24", "most_depth_cm", "beyond")]
    [InlineData("7.62", "15.24", "most_share_pct", "within")]
    [InlineData("7.62", "15.2", "most_share_pct", "beyond")]
    [InlineData("3", "15", "diluted_share_pct", "within")]
    [InlineData("3.1", "15", "diluted_share_pct", "beyond")]
    public void Depth_AtALimit(string depth, string tilled, string limit, string status) =>
        Assert.Equal(
            status,
            Asked.Json(
                $$"""{"manure":false,"beds":[{"area_m2":1,"depth_cm":{{depth}},"tilled_cm":{{tilled}}}]}"""
            )["apply"]!["beds"]![0]!["limits"]!
                .AsArray()
                .Single(l => l!["id"]!.GetValue<string>() == limit)!["status"]!.GetValue<string>()
        );

    [Theory]
    [InlineData("\"area_m2\":4,\"volume_l\":120")]
    [InlineData("\"depth_cm\":3,\"volume_l\":120")]
    [InlineData("\"area_m2\":4,\"depth_cm\":3")]
    public void Bed_ByTwoOfThree_IsTheSame(string two)
    {
        var bed = Asked.Json($$$"""{"beds":[{{{{two}}}}]}""")["apply"]!["beds"]![0]!;

        bed["area_m2"].IsExactly(4, 1e-9);
        bed["depth_cm"].IsExactly(3, 1e-9);
        bed["volume_l"].IsExactly(120, 1e-9);
    }

    [Fact]
    public void Sieve_LeavesTheRestForTheBeds()
    {
        var answer = Asked.Json(
            """{"end":{"volume_l":500,"mass_kg":300},"sieve":{"oversize_pct":20},"apply":{"depth_cm":4}}"""
        );

        answer["yield"]!["usable_volume_l"].IsExactly(400, 1e-9);
        answer["yield"]!["usable_mass_kg"].IsExactly(240, 1e-9);
        answer["apply"]!["area_m2"].IsExactly(10, 1e-9);
    }
}
