using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
using Heapwright.App.Sites;
using Heapwright.Core.Materials.Measurements;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;
using Heapwright.Core.Simulation;
using NodaTime;
using Duration = NodaTime.Duration;
using Temperature = UnitsNet.Temperature;

namespace Heapwright.App.Tests.Diary;

/// <summary>What a diary tells of a heap, as a question of <c>diagnose</c>.</summary>
public sealed class SignsQuestionTests
{
    private static readonly Instant Built = Instant.FromUtc(2026, 10, 1, 12, 0);
    private static readonly Guid HeapId = new("00000000-0000-4000-8000-000000000007");

    [Fact]
    public void Question_OfADiary_TellsWhatStandsInIt()
    {
        var question = Of(
            10,
            Read(2, 55),
            Read(9.5, 38),
            Event(3, new TurnedDeed(Thoroughness.Good, TurnedPart.All)),
            Event(4, new CoveredDeed { Kind = "straw" }),
            Event(8, new RainedDeed { Millimetres = 14 }),
            Sign(9, SqueezeWord.Drips, "sour")
        );

        Assert.Equal(10, question["heap"]!["age_days"]!.GetValue<double>(), 9);
        Assert.Equal("bay", question["heap"]!["container"]!.GetValue<string>());
        Assert.Equal("batch", question["heap"]!["fed"]!.GetValue<string>());
        Assert.Equal("breathable", question["heap"]!["covered"]!.GetValue<string>());
        // 10 parts of grass to 1 of straw by loose volume.
        Assert.Equal(
            """[{"material":"grass_clippings_fresh","share":"only"},{"material":"wheat_straw","share":"little"}]""",
            question["heap"]!["materials"]!.ToJsonString()
        );
        Assert.Equal(
            """[{"day":2,"temperature_c":55,"spot":"core"},{"day":9.5,"temperature_c":38,"spot":"core"}]""",
            question["readings"]!.ToJsonString()
        );
        Assert.Equal(
            """[{"day":3,"do":"turn"},{"day":4,"do":"cover"}]""",
            question["done"]!.ToJsonString()
        );
        Assert.Equal("""{"lately":["wet"]}""", question["weather"]!.ToJsonString());
        Assert.Equal(
            """{"squeeze":{"core":"drips"},"smell":["sour"]}""",
            question["signs"]!.ToJsonString()
        );
        Accepted(question);
    }

    [Fact]
    public void Signs_BeforeATurn_SayNothingOfToday()
    {
        var question = Of(
            5,
            Sign(3, SqueezeWord.Drips, "sour"),
            Event(4, new TurnedDeed(Thoroughness.Good, TurnedPart.All))
        );

        Assert.Null(question["signs"]);
        Accepted(question);
    }

    [Fact]
    public void Signs_OfLongAgo_AreLeftOutAndTheLastSqueezeCounts()
    {
        var question = Of(
            20,
            Sign(10, SqueezeWord.Dust, "smoke"),
            Sign(17, SqueezeWord.Dry, "sour"),
            Sign(19, SqueezeWord.Sponge, "none")
        );

        Assert.Equal(
            """{"squeeze":{"core":"sponge"},"smell":["none"]}""",
            question["signs"]!.ToJsonString()
        );
        Accepted(question);
    }

    [Fact]
    public void Entries_BeforeBuildingOrToCome_AreLeftOut()
    {
        var question = Of(5, Read(-1, 12), Read(6, 60));

        Assert.Null(question["readings"]);
        Accepted(question);
    }

    // What is made here is a question that diagnose takes.
    private static void Accepted(JsonObject question)
    {
        var answer = DiagnoseAnswers.Answer(
            Input.Read(Encoding.UTF8.GetBytes(question.ToJsonString()), "the question")
        );

        Assert.NotEmpty(answer.Json["causes"]!.AsArray());
    }

    private static JsonObject Of(double day, params DiaryEntry[] entries) =>
        SignsQuestion.Of(
            new HeapRecord(
                new KeptHeap
                {
                    Id = HeapId,
                    Name = "Left bay",
                    BuiltAt = Built,
                    Zone = "Europe/London",
                    Question = StartHeap.ToElement(
                        JsonNode.Parse(
                            """
                            {"bin":{"shape":"box","length_m":1,"width_m":1,"height_m":1},
                             "ingredients":[{"material":"grass_clippings_fresh","amount":{"value":500,"unit":"l"}},
                                            {"material":"wheat_straw","amount":{"value":50,"unit":"l"}}]}
                            """
                        )!
                    ),
                },
                [.. entries.Select(e => new JudgedEntry(e, null))]
            ),
            Built + Duration.FromDays(day)
        );

    private static TemperatureEntry Read(double day, double celsius) =>
        new()
        {
            Id = Guid.CreateVersion7(),
            HeapId = HeapId,
            At = At(day),
            ReceivedAt = At(day),
            Way = EntryWay.Page,
            Temperature = Temperature.FromDegreesCelsius(celsius),
        };

    private static EventEntry Event(double day, HeapDeed deed) =>
        new()
        {
            Id = Guid.CreateVersion7(),
            HeapId = HeapId,
            At = At(day),
            ReceivedAt = At(day),
            Way = EntryWay.Page,
            Deed = deed,
        };

    private static SignEntry Sign(double day, SqueezeWord core, string smell) =>
        new()
        {
            Id = Guid.CreateVersion7(),
            HeapId = HeapId,
            At = At(day),
            ReceivedAt = At(day),
            Way = EntryWay.Page,
            Squeeze = [(SignPlace.Core, core)],
            Smell = [smell],
        };

    private static DateTimeOffset At(double day) => Built.ToDateTimeOffset().AddDays(day);
}
