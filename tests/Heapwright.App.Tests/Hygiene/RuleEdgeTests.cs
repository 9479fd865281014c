namespace Heapwright.App.Tests.Hygiene;

/// <summary>Every rule at its edges, with figures typed in from the rules again.</summary>
public class RuleEdgeTests
{
    private const string Vector = "us_503_vector_14d";

    // Rule, process, temperature, whether it must be exceeded, days, turns.
    public static TheoryData<string, string, double, bool, int, int> Rules =>
        new()
        {
            { "us_503_pfrp_windrow", "windrow", 55, false, 15, 5 },
            { "us_503_pfrp_static", "static_aerated", 55, false, 3, 0 },
            { "us_organic_windrow", "windrow", 55, false, 15, 5 },
            { "us_organic_static", "in_vessel", 55, false, 3, 0 },
            { "us_produce_turned", "windrow", 55, false, 15, 5 },
            { "us_produce_turned", "bin", 55, false, 15, 5 },
            { "us_produce_static", "static_aerated", 55, false, 3, 0 },
            { "de_55_14d", "bin", 55, false, 14, 0 },
            { "de_60_6d", "windrow", 60, false, 6, 0 },
            { "de_65_3d", "in_vessel", 65, false, 3, 0 },
            { "wales_reactor_60c_2d", "in_vessel", 60, false, 2, 0 },
            { "wales_windrow_60c_8d", "windrow", 60, false, 8, 3 },
            { "eu_70c_3d", "windrow", 70, false, 3, 0 },
            { "eu_65c_5d", "static_aerated", 65, false, 5, 0 },
            { "eu_60c_7d", "in_vessel", 60, false, 7, 0 },
            { "eu_55c_14d", "windrow", 55, false, 14, 0 },
            { "uk_pas100_guidance", "windrow", 65, false, 7, 2 },
            { "ca_windrow", "windrow", 55, false, 15, 5 },
            { "ca_static", "static_aerated", 55, false, 3, 0 },
            { "au_turned", "windrow", 55, false, 3, 3 },
            { Vector, "bin", 45, true, 14, 0 }, // the average; each day above 40 follows from it
        };

    [Theory]
    [MemberData(nameof(Rules))]
    public void Temperature_AtTheEdge(
        string rule,
        string process,
        double celsius,
        bool exceed,
        int days,
        int turns
    )
    {
        var just = exceed ? celsius + 0.1 : celsius;
        var below = exceed ? celsius : celsius - 0.1;

        Assert.Equal("met", Verdict(rule, process, just, days + 1, turns));
        Assert.Equal("not_met", Verdict(rule, process, below, days + 1, turns));
    }

    [Theory]
    [MemberData(nameof(Rules))]
    public void Days_AtTheEdge(
        string rule,
        string process,
        double celsius,
        bool exceed,
        int days,
        int turns
    )
    {
        var hot = exceed ? celsius + 0.1 : celsius;

        Assert.Equal("met", Verdict(rule, process, hot, days + 1, turns));
        Assert.Equal("depends", Verdict(rule, process, hot, days, turns));
        Assert.Equal("not_met", Verdict(rule, process, hot, days - 1, turns));
    }

    [Theory]
    [MemberData(nameof(Rules))]
    public void Turns_AtTheEdge(
        string rule,
        string process,
        double celsius,
        bool exceed,
        int days,
        int turns
    )
    {
        Assert.Equal(turns, TurnsAsked(rule));
        if (turns > 0)
        {
            Assert.False(exceed);
            Assert.Equal("not_met", Verdict(rule, process, celsius, days + 1, turns - 1));
        }
    }

    [Fact]
    public void Rules_AllIdsOfTheContract_AreThere()
    {
        string[] ids =
        [
            "us_503_pfrp_windrow",
            "us_503_pfrp_static",
            "us_503_psrp",
            "us_503_vector_14d",
            "us_503_time_temperature",
            "us_organic_windrow",
            "us_organic_static",
            "us_produce_turned",
            "us_produce_static",
            "de_55_14d",
            "de_60_6d",
            "de_65_3d",
            "wales_reactor_60c_2d",
            "wales_reactor_70c_1h",
            "wales_windrow_60c_8d",
            "eu_70c_3d",
            "eu_65c_5d",
            "eu_60c_7d",
            "eu_55c_14d",
            "uk_pas100_guidance",
            "ca_windrow",
            "ca_static",
            "au_turned",
        ];
        var answer = Asked.Json(Asked.Question("windrow", Asked.Daily(1, 2, 60)));

        Assert.Equal(
            ids,
            answer.Json["rules"]!.AsArray().Select(r => r!["rule"]!.GetValue<string>())
        );
        // Every one of them has its edges in the tests of this file, or in those named beside it.
        Assert.Empty(
            ids.Except(Rules.Select(r => r.Data.Item1))
                .Except(["us_503_psrp", "us_503_time_temperature", "wales_reactor_70c_1h"])
        );
    }

    [Theory]
    [InlineData("us_503_pfrp_static")]
    [InlineData("us_organic_static")]
    [InlineData("us_produce_static")]
    [InlineData("ca_static")]
    [InlineData("wales_reactor_60c_2d")]
    [InlineData("wales_reactor_70c_1h")]
    [InlineData("us_503_psrp")]
    [InlineData("us_503_pfrp_windrow")]
    public void Bin_OfWhatItIsNot_IsNotApplicable(string rule)
    {
        var answer = Asked.Json(Asked.Question("bin", Asked.Daily(1, 40, 72), 2, 5, 8, 11, 14));

        Assert.Equal("not_applicable", answer.Verdict(rule));
        Assert.NotEmpty(answer.Rule(rule)["why"]!.GetValue<string>());
        Assert.Empty(answer.Rule(rule)["ways"]!.AsArray());
    }

    [Theory]
    [InlineData(40.1, "met")]
    [InlineData(40.0, "not_met")]
    public void Vector_OneDayAtTheEdgeOf40_BreaksTheFourteen(double celsius, string verdict) =>
        Assert.Equal(
            verdict,
            Asked
                .Json(
                    Asked.Question(
                        "windrow",
                        Enumerable.Range(1, 15).Select(d => Asked.Reading(d, d == 8 ? celsius : 50))
                    )
                )
                .Verdict(Vector)
        );

    [Theory]
    [InlineData(40.0, 55.1, "met")]
    [InlineData(39.9, 55.1, "not_met")]
    [InlineData(40.0, 55.0, "not_met")]
    public void Psrp_TemperaturesAtTheirEdges(double low, double spell, string verdict) =>
        Assert.Equal(
            verdict,
            Asked
                .Json(
                    Asked.Question(
                        "windrow",
                        [
                            .. Asked.Daily(1, 6, low),
                            Asked.Reading(3.25, spell),
                            Asked.Reading(3.5, spell),
                        ]
                    )
                )
                .Verdict("us_503_psrp")
        );

    [Theory]
    [InlineData(70.0, 60, "met")]
    [InlineData(69.9, 60, "not_met")]
    [InlineData(70.0, 59, "not_met")]
    public void WalesOneHour_AtItsEdges(double celsius, int minutes, string verdict) =>
        Assert.Equal(
            verdict,
            Asked
                .Json(
                    Asked.Question(
                        "in_vessel",
                        [
                            Asked.Reading(1, 60),
                            Asked.Reading(1.5, celsius),
                            Asked.Reading(1.5 + (minutes / 1440.0), celsius),
                            Asked.Reading(2, 60),
                        ]
                    )
                )
                .Verdict("wales_reactor_70c_1h")
        );

    // D at 60 °C is 12.58 h for solids of 7 % and more (15A NCAC 02T .1106).
    [Theory]
    [InlineData(12.57, "not_met")]
    [InlineData(12.59, "met")]
    public void TimeTemperature_AtADoseOfOne(double hours, string verdict)
    {
        var answer = Asked.Json(
            Asked.Question("bin", [Asked.Reading(1, 60), Asked.Reading(1 + (hours / 24), 60)])
        );

        Assert.Equal(verdict, answer.Verdict("us_503_time_temperature"));
        Assert.Equal(1, answer.Json["time_temperature"]![0]!["dose"]!.GetValue<double>(), 0.002);
    }

    [Theory]
    [InlineData(76.7, "met")]
    [InlineData(76.8, "not_met")]
    public void Organic_CeilingAtItsEdge(double celsius, string verdict) =>
        Assert.Equal(verdict, Verdict("us_organic_static", "in_vessel", celsius, 5, 0));

    [Theory]
    [InlineData(new double[] { 2, 4, 6 }, "met")]
    [InlineData(new double[] { 2, 3.9, 6 }, "not_met")]
    public void WalesTurns_TwoDaysApart(double[] turns, string verdict) =>
        Assert.Equal(
            verdict,
            Asked
                .Json(Asked.Question("windrow", Asked.Daily(1, 9, 60), turns))
                .Verdict("wales_windrow_60c_8d")
        );

    private static int TurnsAsked(string rule) =>
        Asked.Json(Asked.Question("windrow", Asked.Daily(1, 2, 60))).Rule(rule)["asked"]![
            "turns"
        ]!.GetValue<int>();

    // Turns on day 2, 4, 6, … of a record that begins on day 1; short records are turned twice a day.
    private static string Verdict(string rule, string process, double celsius, int days, int turns)
    {
        var apart = turns > 0 && days >= 8 ? Math.Max(0.5, Math.Min(2, (days - 2.0) / turns)) : 0.5;
        return Asked
            .Json(
                Asked.Question(
                    process,
                    Asked.Daily(1, days, celsius),
                    [.. Enumerable.Range(0, turns).Select(i => 1 + (i * apart))]
                )
            )
            .Verdict(rule);
    }
}
