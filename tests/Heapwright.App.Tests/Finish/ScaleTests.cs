using System.Globalization;

namespace Heapwright.App.Tests.Finish;

/// <summary>
/// Both sides of every published boundary, and the boundary itself. Where the print gives a boundary to one class
/// ("&lt;2", "&gt;40", "at most 25") that is kept; where it gives it to two ("10-20", "20-30") the choice is ours and
/// said in docs/models/finish.md. Sources stand beside the scales in data/finish/finish-scales.csv.
/// </summary>
public class ScaleTests
{
    // Brinton et al. 1995, LAGA (from memory): V 0-10, IV 10-20, III 20-30, II 30-40, I >40.
    [Theory]
    [InlineData(0, "V")]
    [InlineData(9.9, "V")]
    [InlineData(10, "V")]
    [InlineData(10.1, "IV")]
    [InlineData(19.9, "IV")]
    [InlineData(20, "IV")]
    [InlineData(20.1, "III")]
    [InlineData(30, "III")]
    [InlineData(30.1, "II")]
    [InlineData(40, "II")]
    [InlineData(40.1, "I")]
    [InlineData(50, "I")]
    public void SelfHeating_ByRise(double rise, string name) =>
        Assert.Equal(name, Flask(rise, "self_heating"));

    // CCME 2005 (from memory): below 8 °C. EU 2019/1009 (from memory): at least Rottegrad III.
    [Theory]
    [InlineData("self_heating_ca", 7.9, "met")]
    [InlineData("self_heating_ca", 8, "not_met")]
    [InlineData("self_heating_eu", 30, "met")]
    [InlineData("self_heating_eu", 30.1, "not_met")]
    public void SelfHeating_ByRule(string scale, double rise, string name) =>
        Assert.Equal(name, Flask(rise, scale));

    // TMECC 05.08-B (from memory): <2, 2-8, 8-15, 15-40, >40. CCQC 2001 (from memory): <2, 2-4, >4. CCME: at most 4.
    [Theory]
    [InlineData("respiration_tmecc", 1.99, "very_stable")]
    [InlineData("respiration_tmecc", 2, "stable")]
    [InlineData("respiration_tmecc", 7.99, "stable")]
    [InlineData("respiration_tmecc", 8, "moderately_unstable")]
    [InlineData("respiration_tmecc", 14.99, "moderately_unstable")]
    [InlineData("respiration_tmecc", 15, "unstable")]
    [InlineData("respiration_tmecc", 40, "unstable")]
    [InlineData("respiration_tmecc", 40.1, "raw")]
    [InlineData("respiration_ccqc", 1.99, "very_mature")]
    [InlineData("respiration_ccqc", 2, "mature")]
    [InlineData("respiration_ccqc", 4, "mature")]
    [InlineData("respiration_ccqc", 4.01, "immature")]
    [InlineData("respiration_ca", 4, "met")]
    [InlineData("respiration_ca", 4.01, "not_met")]
    // PAS 100 (from memory): at most 16 mg CO2, which is 4.3667 mg of carbon in it (44.009/12.011).
    [InlineData("respiration_uk", 4.366, "met")]
    [InlineData("respiration_uk", 4.367, "not_met")]
    public void Respiration_ByCarbon(string scale, double value, string name) =>
        Assert.Equal(name, One("respiration_mg_co2_c_per_g_om_day", value, scale));

    [Theory]
    [InlineData("respiration_mg_co2_per_g_om_day", 16, "respiration_uk", "met")]
    [InlineData("respiration_mg_co2_per_g_om_day", 16.01, "respiration_uk", "not_met")]
    [InlineData("oxygen_mmol_o2_per_kg_om_h", 25, "oxygen_eu", "met")]
    [InlineData("oxygen_mmol_o2_per_kg_om_h", 25.1, "oxygen_eu", "not_met")]
    [InlineData("oxygen_mg_o2_per_kg_om_h", 400, "oxygen_ca", "met")]
    [InlineData("oxygen_mg_o2_per_kg_om_h", 400.1, "oxygen_ca", "not_met")]
    // 400 mg are 12.50 mmol (31.998 mg/mmol).
    [InlineData("oxygen_mmol_o2_per_kg_om_h", 12.5, "oxygen_ca", "met")]
    [InlineData("oxygen_mmol_o2_per_kg_om_h", 12.51, "oxygen_ca", "not_met")]
    [InlineData("cured_days", 20.9, "cured_ca", "not_met")]
    [InlineData("cured_days", 21, "cured_ca", "met")]
    // CCQC 2001 (from memory).
    [InlineData("carbon_nitrogen_ratio", 25, "carbon_nitrogen_ccqc", "met")]
    [InlineData("carbon_nitrogen_ratio", 25.1, "carbon_nitrogen_ccqc", "not_met")]
    [InlineData("ammonium_mg_kg", 74.9, "ammonium_ccqc", "very_mature")]
    [InlineData("ammonium_mg_kg", 75, "ammonium_ccqc", "mature")]
    [InlineData("ammonium_mg_kg", 500, "ammonium_ccqc", "mature")]
    [InlineData("ammonium_mg_kg", 500.1, "ammonium_ccqc", "immature")]
    [InlineData("ammonium_nitrate_ratio", 0.49, "ammonium_nitrate_ccqc", "very_mature")]
    [InlineData("ammonium_nitrate_ratio", 0.5, "ammonium_nitrate_ccqc", "mature")]
    [InlineData("ammonium_nitrate_ratio", 3, "ammonium_nitrate_ccqc", "mature")]
    [InlineData("ammonium_nitrate_ratio", 3.01, "ammonium_nitrate_ccqc", "immature")]
    [InlineData("germination_pct_of_control", 90.1, "germination_ccqc", "very_mature")]
    [InlineData("germination_pct_of_control", 90, "germination_ccqc", "mature")]
    [InlineData("germination_pct_of_control", 80, "germination_ccqc", "mature")]
    [InlineData("germination_pct_of_control", 79.9, "germination_ccqc", "immature")]
    // Handout Compost Calculations (printed): ammonia < 100 mg/kg, < 3.5 mmho/cm.
    [InlineData("ammonium_mg_kg", 99.9, "ammonia_handout", "met")]
    [InlineData("ammonium_mg_kg", 100, "ammonia_handout", "not_met")]
    [InlineData("ec_ds_m", 3.49, "salt_handout", "within")]
    [InlineData("ec_ds_m", 3.5, "salt_handout", "beyond")]
    // Zucconi 1981 (from memory): <50, 50-80, >80, over 100.
    [InlineData("germination_index", 49.9, "germination_index", "highly_phytotoxic")]
    [InlineData("germination_index", 50, "germination_index", "moderately_phytotoxic")]
    [InlineData("germination_index", 80, "germination_index", "moderately_phytotoxic")]
    [InlineData("germination_index", 80.1, "germination_index", "not_phytotoxic")]
    [InlineData("germination_index", 100, "germination_index", "not_phytotoxic")]
    [InlineData("germination_index", 100.1, "germination_index", "stimulating")]
    // WSU Extension 2016 (printed): 12-15 stable, <10 still decaying, >25 ties up nitrogen; avoid > 8 mmho/cm.
    [InlineData(
        "carbon_nitrogen_ratio",
        9.9,
        "carbon_nitrogen_wsu",
        "rich_in_nitrogen_still_rotting"
    )]
    [InlineData("carbon_nitrogen_ratio", 10, "carbon_nitrogen_wsu", "between_10_and_12")]
    [InlineData("carbon_nitrogen_ratio", 11.9, "carbon_nitrogen_wsu", "between_10_and_12")]
    [InlineData("carbon_nitrogen_ratio", 12, "carbon_nitrogen_wsu", "stable")]
    [InlineData("carbon_nitrogen_ratio", 15, "carbon_nitrogen_wsu", "stable")]
    [InlineData("carbon_nitrogen_ratio", 15.1, "carbon_nitrogen_wsu", "between_15_and_25")]
    [InlineData("carbon_nitrogen_ratio", 25, "carbon_nitrogen_wsu", "between_15_and_25")]
    [InlineData("carbon_nitrogen_ratio", 25.1, "carbon_nitrogen_wsu", "ties_up_nitrogen")]
    [InlineData("ec_ds_m", 8, "salt_wsu", "within")]
    [InlineData("ec_ds_m", 8.1, "salt_wsu", "beyond")]
    // Ontario AA (printed): EC < 4 mS/cm, pH 5.5-8.5.
    [InlineData("ec_ds_m", 3.99, "salt_ontario", "within")]
    [InlineData("ec_ds_m", 4, "salt_ontario", "beyond")]
    [InlineData("ph", 5.49, "ph_ontario", "too_sour")]
    [InlineData("ph", 5.5, "ph_ontario", "within")]
    [InlineData("ph", 8.5, "ph_ontario", "within")]
    [InlineData("ph", 8.51, "ph_ontario", "too_alkaline")]
    // Often advised (from memory): < 2 dS/m for seedlings.
    [InlineData("ec_ds_m", 1.99, "salt_seedlings", "within")]
    [InlineData("ec_ds_m", 2, "salt_seedlings", "beyond")]
    public void Quantity_OnAScale(string field, double value, string scale, string name) =>
        Assert.Equal(name, One(field, value, scale));

    [Theory]
    [InlineData(4.9, "stays_cool")]
    [InlineData(5, "heats_a_little")]
    [InlineData(14.9, "heats_a_little")]
    [InlineData(15, "heats_again")]
    public void Reheating_ByRise(double rise, string name) =>
        Assert.Equal(
            name,
            Asked
                .Json($$$"""{"reheat":{"rise_c":{{{Text(rise)}}},"turned":true,"wetted":true}}""")
                .Class("reheating")
        );

    // 16 of 20 against 20 of 20 with roots of 15 against 20 mm: 80 % and an index of 60.
    [Fact]
    public void Seeds_CountedByHand_GetTheirClasses()
    {
        var answer = Asked.Json(
            """{"seed_test":{"sown":20,"germinated":16,"root_mm":[14,16],"control":{"sown":20,"germinated":20,"root_mm":20}}}"""
        );

        Assert.Equal("mature", answer.Class("germination_ccqc"));
        Assert.Equal("moderately_phytotoxic", answer.Class("germination_index"));
        answer["classes"]!
            .AsArray()
            .Single(c => c!["scale"]!.GetValue<string>() == "germination_index")!["value"]
            .IsExactly(60, 1e-9);
    }

    [Fact]
    public void Ammonium_WithNitrate_GetsItsRatio() =>
        Assert.Equal(
            "immature",
            Asked
                .Json("""{"lab":{"ammonium_mg_kg":310,"nitrate_mg_kg":100}}""")
                .Class("ammonium_nitrate_ccqc")
        );

    private static string? Flask(double rise, string scale) =>
        Asked.Json($$$"""{"self_heating":{"rise_c":{{{Text(rise)}}}}}""").Class(scale);

    private static string? One(string field, double value, string scale) =>
        Asked.Json($$"""{"{{field}}":{{Text(value)}}}""").Class(scale);

    private static string Text(double value) => value.ToString(CultureInfo.InvariantCulture);
}
