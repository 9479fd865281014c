using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
using Heapwright.App.Lessons;
using Heapwright.App.Sites;
using NodaTime;

namespace Heapwright.App.Tests.Diary;

/// <summary>What a diary tells of how far a heap has come, as a question of <c>finish</c>; every figure worked out by hand.</summary>
public sealed class DoneQuestionTests
{
    private static KeptHeap Heap => ToldDiary.Heap;

    private static Instant Built => ToldDiary.Built;

    [Fact]
    public void Question_OfADiary_TellsAgeCuringSignsAndTheLastTests()
    {
        var question = Of(
            130,
            """{"day":2,"temperature_c":60}""",
            """{"day":20,"temperature_c":44}""",
            """{"day":30,"temperature_c":30}""",
            """{"day":126,"temperature_c":14,"air_c":11}""",
            """{"day":80,"smell":["ammonia"]}""",
            """{"day":125,"smell":["earthy"],"see":["crumbly"]}""",
            """{"day":100,"do":"test","test":"seed_test","values":{"sown":10,"germinated":4}}""",
            """{"day":120,"do":"test","test":"seed_test","values":{"sown":20,"germinated":18,"control_sown":20,"control_germinated":19}}""",
            """{"day":121,"do":"test","test":"bag_test","values":{"swells":1}}""",
            """{"day":122,"do":"test","test":"amount","values":{"volume_l":430}}"""
        );

        Assert.Equal(130, question["age_days"]!.GetValue<int>());
        Assert.Equal("2026-07-09", question["today"]!.GetValue<string>());
        // Warm for the last time on day 20, seen to be so no longer on day 30: 100 days ago.
        Assert.Equal(100, question["cured_days"]!.GetValue<double>(), 9);
        Assert.Equal(14, question["core_c"]!.GetValue<double>());
        Assert.Equal(11, question["air_c"]!.GetValue<double>());
        // What smelt of ammonia 50 days ago says nothing of today.
        Assert.Equal("""["earthy"]""", question["smell"]!.ToJsonString());
        Assert.Equal("""["crumbly"]""", question["see"]!.ToJsonString());
        Assert.Equal(20, question["seed_test"]!["sown"]!.GetValue<double>());
        Assert.True(question["bag_test"]!["swells"]!.GetValue<bool>());
        Assert.Equal(430, question["end"]!["volume_l"]!.GetValue<double>());
        Assert.Null(question["reheat"]);
        Accepted(question);
    }

    [Theory]
    // 12 days and two turns: 31 after the second, 47 the day after it, so 16 warmer.
    [InlineData("sponge", 16.0, true)]
    // A dry heap that does not heat again shows nothing.
    [InlineData("dry", 16.0, false)]
    public void Question_AfterATurn_TellsHowMuchWarmerItBecame(
        string squeeze,
        double rise,
        bool wetted
    )
    {
        var question = Of(
            30,
            """{"day":4,"do":"turn"}""",
            """{"day":11.5,"temperature_c":40}""",
            """{"day":12,"do":"turn"}""",
            $$$"""{"day":12,"squeeze":{"core":"{{{squeeze}}}"}}""",
            """{"day":12.5,"temperature_c":31}""",
            """{"day":13.5,"temperature_c":47}""",
            """{"day":25,"temperature_c":49}"""
        );

        Assert.Equal(rise, question["reheat"]!["rise_c"]!.GetValue<double>(), 9);
        Assert.Equal(wetted, question["reheat"]!["wetted"]!.GetValue<bool>());
        Accepted(question);
    }

    [Theory]
    // Hot before the turn, cooled by it to 50, and up to 72 again: 22 warmer, though first only 5 below what it was.
    [InlineData(66, "50 56 61 57 72", null, 22.0)]
    // Hottest at the first look, and cooler than before: what it has above the air is what it warmed to.
    [InlineData(45, "38 36 30", 12.0, 26.0)]
    [InlineData(24, "21 20 20", null, 0.0)]
    // 2 warmer at 62: hot as it is, nobody can say that it stays cool.
    [InlineData(66, "60 61 62 61 62", null, null)]
    [InlineData(66, "64 60 55 50 41", null, null)]
    public void Question_AfterATurn_CountsFromItsColdestSinceAndNeverCallsAHotHeapCool(
        double before,
        string after,
        double? air,
        double? rise
    )
    {
        var question = Of(
            20,
            [
                $$"""{"day":11.5,"temperature_c":{{before}}}""",
                """{"day":12,"do":"turn"}""",
                .. after
                    .Split(' ')
                    .Select(
                        (c, i) =>
                            $$"""{"day":{{i + 13}},"temperature_c":{{c}}{{(air is null ? "" : $",\"air_c\":{air}")}}}"""
                    ),
            ]
        );

        Assert.Equal(rise, question["reheat"]?["rise_c"]!.GetValue<double>());
        Accepted(question);
    }

    [Fact]
    public void Question_WhereNobodyLookedADayAfterTheTurn_SaysNothingOfReheating()
    {
        var question = Of(
            30,
            """{"day":11.5,"temperature_c":40}""",
            """{"day":12,"do":"turn"}""",
            """{"day":12.5,"temperature_c":31}"""
        );

        Assert.Null(question["reheat"]);
    }

    [Fact]
    public void Question_OfAHeapThatIsStillWarm_HasNoCuring()
    {
        var question = Of(10, """{"day":9,"temperature_c":41}""");

        Assert.Null(question["cured_days"]);
        Assert.Equal(41, question["core_c"]!.GetValue<double>());
        Assert.Null(question["air_c"]);
    }

    [Fact]
    public void Question_BeforeItIsBuilt_IsNone() =>
        Assert.Null(DoneQuestion.Of(new HeapRecord(Heap, []), Built - Duration.FromDays(1)));

    // Measured on day 60, when 40 l were gone: 400 + 40. What is measured after day 120 is beyond what the model follows.
    [Fact]
    public void Lesson_OfAMeasuredVolume_CountsWhatWasGoneByThen()
    {
        var record = ToldDiary.Record(
            """{"day":2,"temperature_c":60}""",
            """{"day":50,"do":"spread","bed":"A","l":40}""",
            """{"day":60,"do":"test","test":"amount","values":{"volume_l":400}}""",
            """{"day":70,"do":"spread","bed":"B","l":100}""",
            """{"day":130,"do":"test","test":"amount","values":{"volume_l":250}}"""
        );

        var measured = TaughtQuestion.Of(record)["yield"]!;

        Assert.Equal(440, measured["l"]!.GetValue<double>());
        Assert.Equal(60, measured["day"]!.GetValue<double>(), 9);
        Assert.True(measured["all"]!.GetValue<bool>());
    }

    [Fact]
    public void Begun_TestsThatWereReadSince_AreNoLongerWaitedFor()
    {
        var record = ToldDiary.Record(
            """{"day":100,"do":"test","test":"seed_test"}""",
            """{"day":100,"do":"test","test":"bean_test"}""",
            """{"day":106,"do":"test","test":"seed_test","values":{"sown":10,"germinated":9}}"""
        );

        var waits = Assert.Single(DoneQuestion.Begun(record));
        Assert.Contains("bean_test", EntryJson.Said(waits), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(
        """{"do":"test","test":"seed_test","values":{"sown":10,"germinated":12}}""",
        "12 germinated of 10 sown"
    )]
    [InlineData("""{"do":"test","test":"seed_test","values":{"sawn":10}}""", "sown")]
    [InlineData("""{"do":"test","test":"amount"}""", "measured at once")]
    [InlineData("""{"do":"test","test":"sieve"}""", "\"sieve\" is not allowed")]
    [InlineData("""{"do":"turn","test":"seed_test"}""", "\"turn\" has no test")]
    [InlineData("""{"do":"test","test":"lab","values":{"ph":15}}""", "15")]
    public void Test_ThatCannotBe_IsRefusedInOneSentence(string entry, string part)
    {
        var problem = Assert.Throws<InputProblem>(() => ToldDiary.Sent(entry, 3));

        Assert.Contains(part, problem.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', problem.Message);
    }

    [Theory]
    [InlineData("""{"do":"test","test":"bean_test"}""")]
    [InlineData(
        """{"do":"test","test":"self_heating","values":{"ambient_c":19,"highest_c":24.5}}"""
    )]
    [InlineData(
        """{"do":"built","ingredients":[{"name":"Straw","amount":{"value":2,"unit":"bale"},"giver":"A neighbour","since":"2026-02-20"}]}"""
    )]
    public void Entry_WrittenAndReadAgain_IsTheSame(string entry)
    {
        var sent = ToldDiary.Sent(entry, 3);

        var kept = EntryReader.Recorded(EntryJson.Record(new JudgedEntry(sent, null)));

        Assert.Equal(sent, kept.Entry);
    }

    private static JsonObject Of(double today, params string[] entries) =>
        DoneQuestion.Of(ToldDiary.Record(entries), Built + Duration.FromDays(today))!;

    private static void Accepted(JsonObject question) =>
        Assert.NotNull(
            FinishAnswers
                .Answer(Input.Read(Encoding.UTF8.GetBytes(question.ToJsonString()), "diary"))
                .Json["stage"]
        );
}
