using Heapwright.Core.Quantities;

namespace Heapwright.Validation.Published;

/// <summary>Worked examples as printed, through the questions a user asks.</summary>
public class MoistureAndRatioTests
{
    // Trautmann and Richard, Cornell Composting, "Moisture content" (printed): 10 g of grass dried to 2.3 g.
    [Fact]
    public void CornellMoisture_GrassSample_Is77Percent() =>
        Assert.Equal(77, WetBasisMoisture.FromDrying(10, 2.3).Percent, 0.5);

    // Same page (printed): 10 kg grass at 77 %, leaves at 35 %, goal 60 %: 6.8 kg.
    [Fact]
    public void CornellMoisture_LeavesForGrass_Is6Point8Kg() =>
        Assert.Equal(
            6.8,
            Ask.Solve(
                    """
                    {"find":"mass_of_second","for":"moisture_pct_wb","target":60,
                     "first":{"mass_kg":10,"moisture_pct_wb":77},"second":{"moisture_pct_wb":35} }
                    """
                )
                .Json["mass_kg"]
                .Number(),
            0.05
        );

    // Same page (printed): the goal must lie between the two moistures.
    [Theory]
    [InlineData(80)]
    [InlineData(30)]
    public void CornellMoisture_GoalOutsideBoth_IsRefused(double goal)
    {
        var answer = Ask.Solve(
            $$"""
            {"find":"mass_of_second","for":"moisture_pct_wb","target":{{goal}},
             "first":{"mass_kg":10,"moisture_pct_wb":77},"second":{"moisture_pct_wb":35} }
            """
        );
        Assert.False(answer.Yes);
        Assert.NotNull(answer.Json["cannot"]!["why"]);
        Assert.Null(answer.Json["mass_kg"]);
    }

    // Richard and Trautmann, Cornell Composting, "C/N ratio" (formula and answer from memory): 3.5 kg.
    [Fact]
    public void CornellRatio_LeavesForGrass_Is3Point5Kg() =>
        Assert.Equal(
            3.5,
            Ask.Solve(
                    """
                    {"find":"mass_of_second","for":"carbon_nitrogen_ratio","target":30,
                     "first":{"mass_kg":10,"moisture_pct_wb":77,"carbon_pct_db":45,"nitrogen_pct_db":2.4},
                     "second":{"moisture_pct_wb":35,"carbon_pct_db":50,"nitrogen_pct_db":0.75}}
                    """
                )
                .Json["mass_kg"]
                .Number(),
            0.05
        );

    // Cross-checks on the two above (from memory, arithmetic confirmed): 37:1 at 6.8 kg, 66 % at 3.5 kg.
    [Theory]
    [InlineData(6.8, 37, 60)]
    [InlineData(3.5, 30, 66)]
    public void CornellGrassAndLeaves_Mixed_HaveBothFigures(
        double leaves,
        double ratio,
        double moisture
    )
    {
        var json = Ask.Mix(
            $$"""
            {"ingredients":[
              {"name":"grass of the example","amount":{"value":10,"unit":"kg"},"carbon_pct_db":45,"nitrogen_pct_db":2.4,"moisture_pct_wb":77},
              {"name":"leaves of the example","amount":{"value":{{leaves}},"unit":"kg"},"carbon_pct_db":50,"nitrogen_pct_db":0.75,"moisture_pct_wb":35}]}
            """
        ).Json;
        Assert.Equal(ratio, json["carbon_nitrogen_ratio"].Typical(), 0.5);
        Assert.Equal(moisture, json["moisture_pct_wb"].Typical(), 0.5);
        Assert.Equal(
            json["carbon_nitrogen_ratio"]!["low"].Number(),
            json["carbon_nitrogen_ratio"]!["high"].Number()
        );
    }

    // "How to calculate the C:N ratio of your compost mix" (printed): percentages as-is, 34.7.
    [Fact]
    public void OnePageChart_HayScrapsAndCoffee_Is34Point7() =>
        Assert.Equal(
            34.7,
            Ask.Mix(
                    """
                    {"ingredients":[
                      {"name":"hay as is","amount":{"value":50,"unit":"lb"},"carbon_pct_db":40,"nitrogen_pct_db":1,"moisture_pct_wb":0},
                      {"name":"scraps as is","amount":{"value":10,"unit":"lb"},"carbon_pct_db":10,"nitrogen_pct_db":1,"moisture_pct_wb":0},
                      {"name":"coffee as is","amount":{"value":2,"unit":"lb"},"carbon_pct_db":25,"nitrogen_pct_db":1,"moisture_pct_wb":0}]}
                    """
                )
                .Json["carbon_nitrogen_ratio"]
                .Typical(),
            0.05
        );

    // NRAES-54 ch. 3 (from memory): 0.4 lb of sawdust per lb of chicken manure for 60 % moisture.
    [Fact]
    public void Nraes_SawdustForChickenManure_Is0Point4() =>
        Assert.Equal(
            0.4,
            Ask.Solve(
                    """
                    {"find":"mass_of_second","for":"moisture_pct_wb","target":60,
                     "first":{"mass_kg":1,"moisture_pct_wb":70},"second":{"moisture_pct_wb":35} }
                    """
                )
                .Json["mass_kg"]
                .Number(),
            0.05
        );

    // The same mixture: 17.7 as printed from rounded contents (0.018, 0.36, …); 17.66 without the rounding.
    [Fact]
    public void Nraes_ChickenManureAndSawdust_IsNear17Point7() =>
        Assert.Equal(
            17.7,
            Ask.Mix(
                    """
                    {"ingredients":[
                      {"name":"manure of the example","amount":{"value":1,"unit":"lb"},"nitrogen_pct_db":6,"carbon_nitrogen_ratio":10,"moisture_pct_wb":70},
                      {"name":"sawdust of the example","amount":{"value":0.4,"unit":"lb"},"nitrogen_pct_db":0.11,"carbon_nitrogen_ratio":500,"moisture_pct_wb":35}]}
                    """
                )
                .Json["carbon_nitrogen_ratio"]
                .Typical(),
            0.05
        );

    // Moisture balance (computed): 100 kg at 35 % to 55 % takes 44.4 kg; 100 lb at 40 % to 60 % takes 6.0 US gal.
    [Fact]
    public void WaterToAdd_FromTheBalance_Is44Point4Kg()
    {
        Assert.Equal(44.4, Water(100, "kg", 35, 55), 0.05);
        Assert.Equal(6.0, Water(100, "lb", 40, 60) / 3.785411784, 0.05);

        static double Water(double mass, string unit, double moisture, double target) =>
            Ask.Solve(
                    $$"""
                    {"find":"water","target_moisture_pct_wb":{{target}},
                     "ingredients":[{"amount":{"value":{{mass}},"unit":"{{unit}}" },"moisture_pct_wb":{{moisture}} }]}
                    """
                )
                .Json["water_l"]
                .Number();
    }

    // Richard, Cornell, "Solving the equations simultaneously" (method printed, figures computed).
    [Fact]
    public void StrawHenManureAndWater_ForBothTargets_Is25Point87And39Point73()
    {
        var json = Ask.Solve(
            """
            {"find":"two_unknowns","targets":{"carbon_nitrogen_ratio":30,"moisture_pct_wb":55},
             "fixed":[{"mass_kg":50,"moisture_pct_wb":12,"carbon_pct_db":56,"nitrogen_pct_db":0.7}],
             "unknown":[{"moisture_pct_wb":69,"carbon_pct_db":48,"nitrogen_pct_db":8},"water"]}
            """
        ).Json;
        Assert.Equal(25.87, json["mass_kg"]![0].Number(), 0.005);
        Assert.Equal(39.73, json["mass_kg"]![1].Number(), 0.005);
        Assert.Equal(39.73, json["water_l"].Number(), 0.005);
    }

    // The same method where the answer would be −33.0 kg of water (computed): refused, never clipped to 0.
    [Fact]
    public void CattleManureAndStraw_TooWet_IsRefusedWithTheReason()
    {
        var answer = Ask.Solve(
            """
            {"find":"two_unknowns","targets":{"carbon_nitrogen_ratio":30,"moisture_pct_wb":60},
             "fixed":[{"mass_kg":100,"moisture_pct_wb":81,"carbon_pct_db":45.6,"nitrogen_pct_db":2.4}],
             "unknown":[{"moisture_pct_wb":12,"carbon_pct_db":56,"nitrogen_pct_db":0.7},"water"]}
            """
        );
        Assert.False(answer.Yes);
        Assert.Contains(
            "33.0",
            answer.Json["cannot"]!["why"]!.GetValue<string>(),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "wet",
            answer.Json["cannot"]!["why"]!.GetValue<string>(),
            StringComparison.Ordinal
        );
    }

    // Three ingredients for a moisture goal (formula from memory, figures computed): 4.79 kg of straw.
    [Fact]
    public void TwoWetOnesAndStraw_ForMoisture_Is4Point79Kg()
    {
        // 10 kg at 77 % and 5 kg at 72 % are 15 kg at (7.7 + 3.6) / 15.
        var answer = Ask.Solve(
            """
            {"find":"mass_of_second","for":"moisture_pct_wb","target":60,
             "first":{"mass_kg":15,"moisture_pct_wb":75.33333333333333},"second":{"moisture_pct_wb":12}}
            """
        );
        Assert.Equal(4.79, answer.Json["mass_kg"].Number(), 0.005);
    }

    // The average of ratios, 33:1 (a gardening page, printed); the balance with NRAES-54 values gives 28.6 (computed).
    [Fact]
    public void AveragingRatios_TwoGrassToOneOfLeaves_IsNotWhatTheBalanceSays()
    {
        var json = Ask.Mix(
            """
            {"ingredients":[
              {"name":"grass nraes","amount":{"value":2,"unit":"kg"},"nitrogen_pct_db":3.4,"carbon_nitrogen_ratio":17,"moisture_pct_wb":82},
              {"name":"leaves nraes","amount":{"value":1,"unit":"kg"},"nitrogen_pct_db":0.9,"carbon_nitrogen_ratio":54,"moisture_pct_wb":38}]}
            """
        ).Json;
        Assert.Equal(28.6, json["carbon_nitrogen_ratio"].Typical(), 0.05);
    }

    // UW-Madison worksheet key (printed): 2 of manure to 1 of stalks averages 31.7; the balance gives 35.2 (computed).
    [Fact]
    public void AveragingRatios_TwoManureToOneOfStalks_IsNotWhatTheBalanceSays()
    {
        var json = Ask.Mix(
            """
            {"ingredients":[
              {"name":"dairy nraes","amount":{"value":2,"unit":"kg"},"nitrogen_pct_db":2.7,"carbon_nitrogen_ratio":18,"moisture_pct_wb":79},
              {"name":"stalks nraes","amount":{"value":1,"unit":"kg"},"nitrogen_pct_db":0.7,"carbon_nitrogen_ratio":67,"moisture_pct_wb":12}]}
            """
        ).Json;
        Assert.Equal(35.2, json["carbon_nitrogen_ratio"].Typical(), 0.05);
    }
}
