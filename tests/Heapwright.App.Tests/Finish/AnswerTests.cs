using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Texts;

namespace Heapwright.App.Tests.Finish;

/// <summary>The command <c>finish</c> as the contract has it.</summary>
public class AnswerTests
{
    private const string Ripe =
        """{"self_heating":{"rise_c":4},"smell":["earthy"],"see":["crumbly"],"age_days":150,"ec_ds_m":1.2,"seed_test":{"sown":50,"germinated":49,"root_mm":25,"control":{"sown":50,"germinated":49,"root_mm":24}},"manure":false,"herbicide_risk":false}""";

    private const string Fresh =
        """{"self_heating":{"rise_c":45},"smell":"ammonia","see":["recognisable"],"age_days":10}""";

    [Fact]
    public void Nothing_Known_SaysWhatIsMissingAndWhatCanStillBeSaid()
    {
        var answer = Asked.Of("{}");

        Assert.True(answer.Yes);
        Assert.Equal("cannot_tell", answer.Json["stage"]!.GetValue<string>());
        Assert.All(
            answer.Json["ready_for"]!.AsArray(),
            u => Assert.Equal("cannot_tell", u!["ready"]!.GetValue<string>())
        );
        Assert.Null(answer.Json["wait_until"]!["in_days"]);
        Assert.Empty(answer.Json["classes"]!.AsArray());
        Assert.Null(answer.Json["yield"]!["mass_kg"]);
        Assert.Contains(
            "self_heating",
            answer.Json["missing"]!.AsArray().Select(m => m!["field"]!.GetValue<string>())
        );
        // 0.5 to 3 % (Barker 1997, printed).
        Assert.InRange(
            answer.Json["nutrients"]!["nitrogen_pct_db"]!["low"]!.GetValue<double>(),
            0.49,
            0.51
        );
    }

    [Fact]
    public void Ripe_ByEverySign_IsReadyForAll()
    {
        var answer = Asked.Json(Ripe);

        Assert.Equal("mature", answer["stage"]!.GetValue<string>());
        foreach (var use in (string[])["mulch", "beds", "lawn", "seedlings"])
        {
            Assert.Equal("yes", answer.Ready(use));
        }

        // Pots get it mixed with soil, so it is never without care.
        Assert.Equal("with_care", answer.Ready("potting"));
        answer["wait_until"]!["in_days"].IsExactly(0, 0);
        Assert.Empty(answer["contradictions"]!.AsArray());
    }

    [Fact]
    public void Fresh_ByEverySign_IsReadyForNothingAndSaysWhen()
    {
        var answer = Asked.Json(Fresh);

        Assert.Equal("active", answer["stage"]!.GetValue<string>());
        Assert.All(
            answer["ready_for"]!.AsArray(),
            u => Assert.Equal("not_yet", u!["ready"]!.GetValue<string>())
        );
        var beds = answer.Use("beds")["wait_days"].Typical();
        var seedlings = answer.Use("seedlings")["wait_days"].Typical();
        Assert.InRange(beds, 14, 60);
        Assert.True(seedlings > beds + 21);
        Assert.Equal(seedlings, answer["wait_until"]!["in_days"].Typical());
        Assert.Equal(10 + seedlings, answer["wait_until"]!["day"]!.GetValue<double>(), 1e-9);
    }

    [Fact]
    public void Signs_ThatDisagree_AreNamedAndWidenTheAnswer()
    {
        var answer = Asked.Json(
            """{"self_heating":{"rise_c":45},"smell":["earthy"],"see":["crumbly"]}"""
        );

        Assert.NotEmpty(answer["contradictions"]!.AsArray());
        Assert.All(
            answer["stage_chances"]!.AsObject(),
            c => Assert.True(c.Value!.GetValue<double>() < 0.75)
        );
    }

    [Fact]
    public void Flask_StillRising_IsTheRipestClassThatCanBe()
    {
        var still = Asked.Json(
            """{"self_heating":{"ambient_c":20,"readings":[{"day":0,"temperature_c":20},{"day":1,"temperature_c":24},{"day":2,"temperature_c":29}]}}"""
        );
        var done = Asked.Json(
            """{"self_heating":{"ambient_c":20,"readings":[{"day":0,"temperature_c":20},{"day":3,"temperature_c":29},{"day":6,"temperature_c":24}]}}"""
        );

        Assert.True(still["classes"]![0]!["at_least"]!.GetValue<bool>());
        Assert.False(done["classes"]![0]!["at_least"]!.GetValue<bool>());
        Assert.True(Chance(still, "V") < 0.3);
        Assert.True(Chance(done, "V") > 0.7);
    }

    [Theory]
    [InlineData("""{"readings":[20,31,44,38],"ambient_c":20}""", 24)]
    [InlineData(
        """{"readings":[{"hour":0,"temperature_f":68},{"hour":48,"temperature_f":104}],"room_c":20}""",
        20
    )]
    [InlineData("""{"peak_c":52,"air_c":19}""", 33)]
    [InlineData("""{"rise_c":{"low":8,"typical":9,"high":12}}""", 9)]
    [InlineData(
        """{"readings":[{"time":"2026-05-01T08:00:00+02:00","temperature_c":21},{"time":"2026-05-03","temperature_c":33,"ambient_c":18}],"ambient_c":20}""",
        15
    )]
    public void Flask_InAnyShape_IsRead(string flask, double rise) =>
        Assert.Equal(
            rise,
            Asked.Json($$"""{"self_heating":{{flask}}}""")["classes"]![0]!["value"].Typical(),
            1e-9
        );

    [Theory]
    [InlineData("""{"sown":20,"germinated":16,"control":{"sown":20,"germinated":20}}""")]
    [InlineData("""{"sown":20,"germinated":16,"control_sown":20,"control_germinated":20}""")]
    [InlineData(
        """{"compost":{"sown":20,"germinated":16},"control":{"sown":20,"germinated":20}}"""
    )]
    [InlineData("""{"sample":{"sown":10,"germinated":8},"control":{"sown":30,"germinated":30}}""")]
    [InlineData("""{"germination_pct_of_control":80}""")]
    public void Seeds_InAnyShape_AreRead(string seeds) =>
        Assert.Equal(
            80,
            Asked.Json($$"""{"seed_test":{{seeds}}}""")["classes"]![0]!["value"].Typical(),
            1e-9
        );

    [Fact]
    public void Flask_AsAListBesideTheRoom_IsRead() =>
        Assert.Equal(
            "II",
            Asked
                .Json(
                    """{"ambient_c":18,"self_heating":[{"day":1,"temperature_c":40},{"day":4,"temperature_c":52},{"day":7,"temperature_c":45}]}"""
                )
                .Class("self_heating")
        );

    [Fact]
    public void Salts_BeyondALimit_AreNotCuredByWaiting()
    {
        var answer = Asked.Json(
            Ripe.Replace("\"ec_ds_m\":1.2", "\"ec_ds_m\":9", StringComparison.Ordinal)
        );

        foreach (var use in (string[])["beds", "lawn", "potting", "seedlings"])
        {
            Assert.Equal("no", answer.Ready(use));
            Assert.Null(answer.Use(use)["wait_days"]);
        }

        Assert.Equal("with_care", answer.Ready("mulch"));
        Assert.Contains("salt_in_compost", Cautions(answer));
    }

    [Fact]
    public void Beans_HarmedBesideAHealthyControl_KeepItOffBeds()
    {
        var answer = Asked.Json(
            With(
                Ripe,
                "\"bean_test\":{\"pots\":3,\"harmed\":2,\"control_pots\":3,\"control_harmed\":0,\"days\":18}"
            )
        );

        Assert.Equal("harmed", answer["herbicide_test"]!["verdict"]!.GetValue<string>());
        foreach (var use in (string[])["mulch", "beds", "potting", "seedlings"])
        {
            Assert.Equal("no", answer.Ready(use));
        }

        Assert.Equal("with_care", answer.Ready("lawn"));
        Assert.Contains("herbicide_in_compost", Cautions(answer));
    }

    [Fact]
    public void Beans_RiskWithoutATest_IsTestedFirst()
    {
        var answer = Asked.Json(
            Ripe.Replace(
                "\"herbicide_risk\":false",
                "\"herbicide_risk\":true",
                StringComparison.Ordinal
            )
        );

        Assert.Equal("cannot_tell", answer.Ready("beds"));
        Assert.Equal("yes", answer.Ready("mulch"));
        Assert.InRange(answer.Use("beds")["wait_days"].Typical(), 20.9, 21.1);
    }

    // 7 CFR 205.203(c)(1) (printed): 120 days where the edible part touches the soil, 90 otherwise.
    [Theory]
    [InlineData("carrot", "", 120.0, "2026-09-08")]
    [InlineData("tomato", "", 90.0, "2026-08-09")]
    [InlineData("tomato", ",\"touches_soil\":true", 120.0, "2026-09-08")]
    [InlineData("flowers", "", 0.0, "2026-05-11")]
    [InlineData("something rare", "", 120.0, "2026-09-08")]
    [InlineData("carrot", ",\"eaten\":false", 0.0, "2026-05-11")]
    public void Manure_NotShownHot_KeepsTheInterval(
        string crop,
        string more,
        double days,
        string date
    )
    {
        var bed = Asked.Json(
            $$"""{"today":"2026-05-11","manure":true,"beds":[{"area_m2":4,"depth_cm":2,"crop":"{{crop}}"{{more}}}]}"""
        )["apply"]!["beds"]![0]!;

        Assert.Equal(days, bed["harvest_after_days"]!.GetValue<double>());
        Assert.Equal(date, bed["harvest_from_date"]!.GetValue<string>());
    }

    [Theory]
    [InlineData("\"manure\":true,\"shown_hot\":true", 0.0)]
    [InlineData("\"manure\":{\"shown_hot\":true}", 0.0)]
    [InlineData("\"manure\":true,\"rules_met\":[\"us_organic_windrow\"]", 0.0)]
    [InlineData("\"manure\":true,\"rules_met\":[\"us_503_psrp\"]", 120.0)]
    [InlineData("\"manure\":false", 0.0)]
    [InlineData("\"age_days\":5", null)]
    public void Manure_ShownHotOrNotInIt_NeedsNone(string said, double? days) =>
        Assert.Equal(
            days,
            Asked.Json($$"""{{{said}},"beds":[{"area_m2":4,"depth_cm":2,"crop":"carrot"}]}""")[
                "apply"
            ]!["beds"]![0]!
                ["harvest_after_days"]
                ?.GetValue<double>()
        );

    [Theory]
    [InlineData("""{"manure":true,"smel":"earthy"}""", "the nearest is \"smell\"")]
    [InlineData("""{"smell":["earthly"]}""", "smell[0]: \"earthly\" is not allowed")]
    [InlineData(
        """{"self_heating":{"ambient_c":20,"readings":[{"day":1,"temperature_c":200}]}}""",
        "self_heating.readings[0].temperature_c: 200 is out of range"
    )]
    [InlineData("""{"self_heating":{"ambient_c":20,"room_c":21}}""", "say")]
    [InlineData(
        """{"self_heating":{"rise_c":30,"ambient_c":20,"readings":[20,30,25]}}""",
        "self_heating.rise_c: 30 is not what the readings say"
    )]
    [InlineData(
        """{"seed_test":{"sown":20,"germinated":21}}""",
        "seed_test.germinated: 21 germinated of 20 sown"
    )]
    [InlineData("""{"seed_test":{"germinated":5}}""", "\"sown\" is missing")]
    [InlineData("""{"bean_test":{"pots":3,"harmed":4}}""", "bean_test.harmed: 4 is out of range")]
    [InlineData(
        """{"ash":{"before_pct_db":0,"after_pct_db":25}}""",
        "ash.before_pct_db: 0 is out of range"
    )]
    [InlineData(
        """{"ash":{"before_pct_db":10},"start":{"ash_pct_db":11}}""",
        "start.ash_pct_db: the ash was given already"
    )]
    [InlineData(
        """{"start":{"mass_kg":10,"dry_mass_kg":11}}""",
        "11 kg of dry matter is more than the 10 kg"
    )]
    [InlineData("""{"end":{"volume_l":10,"volume_m3":0.01}}""", "say one thing")]
    [InlineData("""{"lab":{"ph":7},"ph":7}""", "ph: stands in \"lab\" too")]
    [InlineData("""{"beds":[{"name":"A"}]}""", "beds[0]: the field \"area_m2\" is missing")]
    [InlineData("""{"beds":[{"width_m":2}]}""", "\"width_m\" without a \"length_m\"")]
    [InlineData("""{"today":"2026-05-01","built":"2026-05-02"}""", "built: is -1 days before")]
    [InlineData("""{"today":"1 May 2026"}""", "today: \"1 May 2026\" is no date")]
    [InlineData(
        """{"today":"2026-05-20","built":"2026-05-01","age_days":40}""",
        "age_days: 40 is not the 19 days"
    )]
    [InlineData("""{"water_l":10}""", "water_l: belongs to \"ingredients\"")]
    [InlineData(
        """{"beds":[{"area_m2":2,"depth_cm":2,"volume_l":40}]}""",
        "write two of the three"
    )]
    [InlineData("""{"beds":[{"volume_l":40}]}""", "needs an \"area_m2\" or a \"depth_cm\"")]
    [InlineData("""{"date":"2026-05-01","today":"2026-05-01"}""", "say one thing")]
    [InlineData("""{"schema":2}""", "schema: 2 is out of range")]
    public void Question_Wrong_IsRefusedAtItsPlace(string question, string part) =>
        Assert.Contains(part, Asked.Wrong(question), StringComparison.Ordinal);

    [Fact]
    public void Dates_GoOutAsTheyCameIn()
    {
        var day = Asked.Json("""{"today":"2026-09-12","built":"2026-09-02","smell":["ammonia"]}""");
        var time = Asked.Json(
            """{"today":"2026-09-12T10:00:00+02:00","age_days":10,"smell":["ammonia"]}"""
        );
        var none = Asked.Json("""{"age_days":10,"smell":["ammonia"]}""");

        Assert.Matches(
            "^2026-1[0-2]-[0-3][0-9]$|^2027",
            day["wait_until"]!["date"]!.GetValue<string>()
        );
        Assert.Matches("T[0-9:]{8}[+]02:00$", time["wait_until"]!["date"]!.GetValue<string>());
        Assert.Null(none["wait_until"]!["date"]);
        Assert.Equal(
            day["wait_until"]!["in_days"].Typical(),
            none["wait_until"]!["in_days"].Typical(),
            1e-12
        );
    }

    [Fact]
    public void SameQuestion_SameSeed_SameBytes()
    {
        var one = AnswerBytes.Of(Asked.Json(With(Fresh, "\"seed\":5")));
        var again = AnswerBytes.Of(Asked.Json(With(Fresh, "\"seed\":5")));
        var other = AnswerBytes.Of(Asked.Json(With(Fresh, "\"seed\":6")));

        Assert.Equal(one, again);
        Assert.NotEqual(one, other);
    }

    [Fact]
    public void Text_InEveryUnit_HasNoSentenceMissing()
    {
        foreach (var name in Measures.Names)
        {
            var text = Asked
                .Of(
                    With(
                        Ripe,
                        "\"end\":{\"volume_l\":500},\"beds\":[{\"area_m2\":6,\"crop\":\"cabbage\"}]"
                    ),
                    Measures.Find(name)
                )
                .Text;
            Assert.Contains(name == "metric" ? "500 L" : "gal", text, StringComparison.Ordinal);
            Assert.Contains(name == "metric" ? "6 m²" : "64.6 ft²", text, StringComparison.Ordinal);
        }
    }

    private static string With(string question, string more) => question[..^1] + "," + more + "}";

    private static double Chance(JsonObject answer, string name) =>
        answer["classes"]![0]!["chances"]![name]!.GetValue<double>();

    [Theory]
    [InlineData("smell", "smoke", true)]
    [InlineData("see", "glow", true)]
    [InlineData("see", "crumbly", false)]
    public void Cautions_SmokeOrGlow_ComeBeforeAllOthers(string field, string word, bool first) =>
        Assert.Equal(
            first,
            Cautions(Asked.Json($$"""{"signs":{"{{field}}":["{{word}}"]} }""")).First()
                == "smoke_keep_away"
        );

    private static IEnumerable<string> Cautions(JsonObject answer) =>
        answer["cautions"]!.AsArray().Select(c => c!["id"]!.GetValue<string>());
}
