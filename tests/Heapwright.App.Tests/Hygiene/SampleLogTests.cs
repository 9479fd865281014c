using System.Text.Json.Nodes;

namespace Heapwright.App.Tests.Hygiene;

/// <summary>
/// Ten constructed records; the verdicts follow from the words of the rules (40 CFR 503 Appendix B, 7 CFR 205.2, BioAbfV
/// Annex 2). Where days with a reading and elapsed time come to different verdicts, it depends.
/// </summary>
public class SampleLogTests
{
    private static readonly double[] Five = [3, 6, 9, 12, 15];

    [Fact]
    public void L1_FifteenDaysAt56To66_DependsOnTheCount()
    {
        JsonObject[] log =
        [
            .. Enumerable.Range(1, 15).Select(d => Asked.Reading(d, 56 + (10 * (d - 1) / 14.0))),
        ];
        var answer = Asked.Json(Asked.Question("windrow", log, Five));

        Assert.Equal("depends", answer.Verdict("us_503_pfrp_windrow"));
        var rule = answer.Rule("us_503_pfrp_windrow");
        Assert.Equal(15, rule["shown"]!["longest_run_days"]!.GetValue<int>());
        Assert.Equal(15, rule["shown"]!["days_at_or_above"]!.GetValue<int>());
        Assert.Equal(5, rule["shown"]!["turns"]!.GetValue<int>());
        Assert.Equal(
            "Counted by days with a reading: 15 of 15 days and 5 of 5 turns: met. Counted as elapsed time: 14 of 15 days and 5 of 5 turns: not met.",
            rule["depends_on"]!.GetValue<string>()
        );
        Assert.Equal("met", answer.Verdict("us_503_psrp"));
        Assert.Equal("met", answer.Verdict("de_55_14d"));
        var closed = Asked.Json(
            Asked.Question("in_vessel", log.Select(r => r.DeepClone().AsObject()), Five)
        );
        Assert.Equal("met", closed.Verdict("us_503_pfrp_static"));
    }

    [Fact]
    public void L2_FourteenDays_AreTooFewForAWindrowAndDependForGermany()
    {
        var answer = Asked.Json(Asked.Question("windrow", Asked.Daily(1, 14, 57), 2, 4, 6, 8, 10));

        Assert.Equal("not_met", answer.Verdict("us_503_pfrp_windrow"));
        Assert.Equal("met", answer.Verdict("us_503_psrp"));
        Assert.Equal("depends", answer.Verdict("de_55_14d"));
        Assert.Contains(
            "13 of 14 days: not met",
            answer.Rule("de_55_14d")["depends_on"]!.GetValue<string>(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void L3_FourTurns_AreTooFew()
    {
        var answer = Asked.Json(Asked.Question("windrow", Asked.Daily(1, 20, 58), 3, 6, 9, 12));

        Assert.Equal("not_met", answer.Verdict("us_503_pfrp_windrow"));
        Assert.Equal(4, answer.Rule("us_503_pfrp_windrow")["shown"]!["turns"]!.GetValue<int>());
        Assert.Equal("met", answer.Verdict("us_503_psrp"));
        Assert.Equal("met", answer.Verdict("de_55_14d"));
    }

    [Fact]
    public void L4_ThreeDaysAt61_CountForVesselsOnly()
    {
        var windrow = Asked.Json(Asked.Question("windrow", Asked.Daily(1, 3, 61)));
        Assert.Equal("not_met", windrow.Verdict("us_503_pfrp_windrow"));
        Assert.Equal("not_applicable", windrow.Verdict("us_503_pfrp_static"));
        Assert.Equal("not_met", windrow.Verdict("us_503_psrp"));
        Assert.Equal("not_met", windrow.Verdict("de_60_6d"));
        Assert.Equal("not_met", windrow.Verdict("de_65_3d"));

        // One reading on each of three days is two days of elapsed time; a fourth reading makes it three.
        var three = Asked.Json(Asked.Question("static_aerated", Asked.Daily(1, 3, 61)));
        Assert.Equal("depends", three.Verdict("us_503_pfrp_static"));
        var four = Asked.Json(Asked.Question("static_aerated", Asked.Daily(1, 4, 61)));
        Assert.Equal("met", four.Verdict("us_503_pfrp_static"));
        Assert.Equal("not_applicable", four.Verdict("us_503_pfrp_windrow"));
    }

    [Theory]
    [InlineData(240, "met")] // L5: a spell of four hours
    [InlineData(230, "not_met")] // L6: of 3 h 50 min
    public void L5AndL6_TheSpellAbove55_IsWhatDecides(int minutes, string verdict)
    {
        var answer = Asked.Json(
            Asked.Question(
                "windrow",
                [
                    .. Asked.Daily(1, 6, 42),
                    Asked.Reading(3.4, 56),
                    Asked.Reading(3.4 + (minutes / 1440.0), 56),
                ]
            )
        );

        Assert.Equal(verdict, answer.Verdict("us_503_psrp"));
        Assert.Equal("not_met", answer.Verdict("us_503_pfrp_windrow"));
        Assert.Equal("not_met", answer.Verdict("de_55_14d"));
        Assert.Equal(
            minutes / 60.0,
            answer.Rule("us_503_psrp")["shown"]!["longest_spell_h"]!.GetValue<double>(),
            1e-6
        );
    }

    [Fact]
    public void L5_WithOneReadingOnEachOfFiveDays_DependsOnTheCount() =>
        Assert.Equal(
            "depends",
            Asked
                .Json(
                    Asked.Question(
                        "windrow",
                        [
                            .. Asked.Daily(1, 5, 42),
                            Asked.Reading(3.4, 56),
                            Asked.Reading(3.4 + (4 / 24.0), 56),
                        ]
                    )
                )
                .Verdict("us_503_psrp")
        );

    [Fact]
    public void L7_TheOuterProbe_Decides()
    {
        var core = Asked.Daily(1, 20, 65);
        var outer = Enumerable.Range(1, 20).Select(d => Asked.Reading(d, 48, "outer"));
        var answer = Asked.Json(Asked.Question("windrow", [.. core, .. outer], Five));

        Assert.Equal("not_met", answer.Verdict("us_503_pfrp_windrow"));
        Assert.Equal("not_met", answer.Verdict("us_503_psrp"));
        Assert.Equal("not_met", answer.Verdict("de_55_14d"));
        Assert.Equal("met", answer.Verdict("us_503_vector_14d"));
        Assert.Equal(
            "met",
            Asked
                .Json(Asked.Question("windrow", Asked.Daily(1, 20, 65), Five))
                .Verdict("us_503_pfrp_windrow")
        );
    }

    [Fact]
    public void L8_ReadingsMissingOnTwoDays_CannotTell()
    {
        var answer = Asked.Json(
            Asked.Question(
                "windrow",
                Enumerable
                    .Range(1, 16)
                    .Where(d => d is not (5 or 11))
                    .Select(d => Asked.Reading(d, 60)),
                Five
            )
        );

        var rule = answer.Rule("us_503_pfrp_windrow");
        Assert.Equal("cannot_tell", rule["verdict"]!.GetValue<string>());
        Assert.Null(rule["depends_on"]);
        Assert.Equal(
            [(4.0, 6.0), (10.0, 12.0)],
            rule["gaps"]!
                .AsArray()
                .Select(g => (g!["from"]!.GetValue<double>(), g["to"]!.GetValue<double>()))
        );
    }

    [Theory]
    [InlineData(131.0, "depends", 15)]
    [InlineData(130.9, "not_met", 0)]
    public void L9_Fahrenheit_IsConvertedExactly(double fahrenheit, string verdict, int days)
    {
        var answer = Asked.Json(
            Asked.Question(
                "windrow",
                Enumerable
                    .Range(1, 15)
                    .Select(d => new JsonObject
                    {
                        ["day"] = d,
                        ["probe"] = "core",
                        ["temperature_f"] = fahrenheit,
                    }),
                Five
            )
        );

        var rule = answer.Rule("us_503_pfrp_windrow");
        Assert.Equal(verdict, rule["verdict"]!.GetValue<string>());
        Assert.Equal(days, rule["shown"]!["longest_run_days"]!.GetValue<int>());
    }

    [Fact]
    public void L10_OneDayAt78_IsAboveTheCeilingOfTheOrganicRule()
    {
        var answer = Asked.Json(
            Asked.Question(
                "windrow",
                Enumerable.Range(1, 15).Select(d => Asked.Reading(d, d == 8 ? 78 : 60)),
                Five
            )
        );

        Assert.Equal("depends", answer.Verdict("us_503_pfrp_windrow"));
        Assert.Equal("not_met", answer.Verdict("us_organic_windrow"));
    }
}
