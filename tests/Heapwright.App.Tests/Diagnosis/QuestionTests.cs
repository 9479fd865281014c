using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Library;
using Heapwright.App.Texts;
using Heapwright.Core.Diagnosis;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Tests.Diagnosis;

/// <summary>The question <c>diagnose</c>: what it takes, what it refuses, what it answers.</summary>
public class QuestionTests
{
    private static readonly string[] CauseIds =
        "too_wet too_dry short_of_nitrogen excess_nitrogen too_small cold_weather no_air too_loose spent normal_cooling normal_hot overheating fire_risk lit_from_outside poor_drainage exposed_food animals_get_in actinomycetes fungi seeds_survived roots_grow_in disease_risk herbicide_residue too_much_soil nitrogen_lost_in_store fed_little_by_little turned_too_often nobody_in_charge heat_from_outside too_early material_mistaken acid_stall reading_misleads".Split(
            ' '
        );

    [Fact]
    public void The_causes_are_those_of_the_contract() =>
        Assert.Equal(
            CauseIds.Order(StringComparer.Ordinal),
            SignModelReader.Model.Causes.Select(c => c.Id).Order(StringComparer.Ordinal)
        );

    [Fact]
    public void Every_cause_has_its_sentences_and_its_sources_are_on_the_list()
    {
        foreach (var cause in SignModelReader.Model.Causes)
        {
            foreach (var part in new[] { "name", "tell", "now", "properly", "watch" })
            {
                Assert.NotNull(Words.TryOf($"signs.{cause.Id}_{part}"));
            }

            Assert.NotEmpty(cause.Sources);
            Assert.All(cause.Sources, s => Assert.NotEmpty(References.Title(s)));
            Assert.All(cause.Cautions, c => Assert.NotNull(Words.TryOf($"cautions.{c}.text")));
        }
    }

    [Fact]
    public void Every_row_of_signs_has_a_known_source_and_words()
    {
        foreach (var field in SignModelReader.Model.Fields)
        {
            foreach (var word in field.Words)
            {
                foreach (var cause in SignModelReader.Model.Causes)
                {
                    Assert.All(
                        field.SourcesOf(word, cause.Id),
                        s => Assert.NotEmpty(References.Title(s))
                    );
                }

                if (
                    !char.IsAsciiDigit(word[^1])
                    && field.Id is not ("stage" or "heat" or "faults_at_once")
                )
                {
                    Assert.NotNull(Words.TryOf($"signs.word_{field.Id.Replace('.', '_')}_{word}"));
                }
            }
        }
    }

    [Fact]
    public void Nothing_at_all_gets_the_chances_of_worried_heaps_and_a_first_question()
    {
        var answer = Ask("{}");
        Assert.Equal(1, answer["schema"]!.GetValue<int>());
        Assert.InRange(answer["healthy_probability"]!.GetValue<double>(), 0.15, 0.35);
        Assert.NotEmpty(answer["ask_next"]!.AsArray());
        Assert.True(Chance(answer, "too_dry") < 0.3);
    }

    [Fact]
    public void Causes_are_ranked_and_complete()
    {
        var answer = Ask("""{"signs":{"smell":["ammonia"]}}""");
        var chances = answer["causes"]!
            .AsArray()
            .Select(c => c!["probability"]!.GetValue<double>())
            .ToList();
        Assert.Equal(chances.OrderDescending(), chances);
        Assert.All(chances, p => Assert.InRange(p, 0, 1));
        foreach (var field in new[] { "id", "because", "tell_apart", "now", "properly", "source" })
        {
            Assert.All(answer["causes"]!.AsArray(), c => Assert.NotNull(c![field]));
        }

        Assert.Equal("excess_nitrogen", First(answer));
    }

    [Fact]
    public void Every_option_of_a_question_can_be_put_into_the_input_as_it_is()
    {
        var (open, tried) = (new Queue<JsonObject>([new JsonObject()]), 0);
        while (open.Count > 0 && tried < 150)
        {
            var question = open.Dequeue();
            foreach (var next in Ask(question.ToJsonString())["ask_next"]!.AsArray())
            {
                foreach (var option in next!["options"]!.AsArray())
                {
                    var put = Put(question, next["field"]!.GetValue<string>(), option!);
                    Assert.NotEmpty(Ask(put.ToJsonString())["causes"]!.AsArray());
                    tried++;
                    if (open.Count < 6 && tried % 17 == 0)
                    {
                        open.Enqueue(put);
                    }
                }
            }
        }

        Assert.InRange(tried, 100, 1000);
    }

    [Fact]
    public void What_was_answered_or_is_not_known_is_not_asked_again()
    {
        var answer = Ask(
            """{"heap":{"size":"medium","age_days":9},"signs":{"squeeze":{"core":"sponge"},"smell":["none"],"unknown":["feel","ants"]}}"""
        );
        var asked = answer["ask_next"]!
            .AsArray()
            .ToLookup(q => q!["field"]!.GetValue<string>(), q => q!["options"]!.ToJsonString());
        foreach (
            var field in new[]
            {
                "heap.size",
                "heap.age_days",
                "signs.squeeze.core",
                "signs.smell",
                "signs.feel.core",
            }
        )
        {
            Assert.False(asked.Contains(field), field);
        }

        Assert.DoesNotContain(
            asked["signs.visitors"],
            o => o.Contains("\"ants\"", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Smoke_brings_the_caution_to_keep_away()
    {
        var answer = Ask("""{"signs":{"see":["smoke"]}}""");
        Assert.Contains(
            answer["cautions"]!.AsArray(),
            c => c!["id"]!.GetValue<string>() == "smoke_keep_away"
        );
        Assert.Contains("fire service", answer.ToJsonString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Amounts_are_worked_out_where_volume_and_squeeze_are_known()
    {
        var dry = Ask("""{"heap":{"volume_m3":1},"signs":{"squeeze":{"core":"dry"}}}""");
        var water = dry["causes"]!
            .AsArray()
            .Single(c => c!["id"]!.GetValue<string>() == "too_dry")!["amounts"]!["water_l"]!;
        Assert.Equal(
            RepairAmount.Water(Spread.Exact(1), "dry")!.Litres.Typical,
            water["typical"]!.GetValue<double>()
        );
        var without = Ask("""{"signs":{"squeeze":{"core":"dry"}}}""");
        Assert.Null(without["causes"]!.AsArray()[0]!["amounts"]);
    }

    [Fact]
    public void A_single_word_may_stand_where_a_list_is_meant() =>
        Assert.Equal(
            Ask("""{"worry":["smell"],"signs":{"smell":["sour"]}}""").ToJsonString(),
            Ask("""{"worry":"smell","signs":{"smell":"sour"}}""").ToJsonString()
        );

    [Fact]
    public void The_order_of_what_is_told_changes_nothing_but_its_order()
    {
        var one = Ask(
            """{"signs":{"see":["matted","slimy"],"smell":["rotten"]},"worry":["smell"]}"""
        );
        var other = Ask(
            """{"worry":["smell"],"signs":{"smell":["rotten"],"see":["slimy","matted"]}}"""
        );
        foreach (var cause in CauseIds)
        {
            Assert.Equal(Chance(one, cause), Chance(other, cause), 10);
        }
    }

    [Fact]
    public void Above_air_is_the_reading_where_the_air_is_known() =>
        Assert.Equal(
            Chance(
                Ask("""{"weather":{"air_c":10},"readings":[{"above_air_c":50}]}"""),
                "normal_hot"
            ),
            Chance(
                Ask("""{"weather":{"air_c":10},"readings":[{"temperature_c":60}]}"""),
                "normal_hot"
            ),
            10
        );

    [Theory]
    [InlineData("""{"heap":{"size":"huge"}}""", "heap.size", "bucket")]
    [InlineData("""{"signs":{"smell":["amonia"]}}""", "signs.smell[0]", "ammonia")]
    [InlineData("""{"signs":{"squeze":{"core":"dry"}}}""", "signs", "squeeze")]
    [InlineData("""{"readings":[{"day":1}]}""", "readings[0]", "temperature_c")]
    [InlineData(
        """{"readings":[{"temperature_c":"hot"}]}""",
        "readings[0].temperature_c",
        "number"
    )]
    [InlineData("""{"done":[{"result":"hotter"}]}""", "done[0]", "\"do\" is missing")]
    [InlineData("""{"worry":["everything"]}""", "worry[0]", "not_heating")]
    [InlineData(
        """{"heap":{"materials":[{"material":"grass"}]}}""",
        "heap.materials[0].material",
        "nearest"
    )]
    [InlineData("""{"heap":{"volume_m3":-1}}""", "heap.volume_m3", "allowed")]
    public void What_is_not_understood_is_refused_in_one_sentence(
        string question,
        string place,
        string says
    )
    {
        var problem = Assert.Throws<InputProblem>(() => Ask(question));
        Assert.Contains(place, problem.Message, StringComparison.Ordinal);
        Assert.Contains(says, problem.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', problem.Message);
    }

    private static JsonObject Ask(string question) =>
        DiagnoseAnswers.Answer(Input.Read(Encoding.UTF8.GetBytes(question), "q.json")).Json;

    private static string First(JsonObject answer) =>
        answer["causes"]!.AsArray()[0]!["id"]!.GetValue<string>();

    private static double Chance(JsonObject answer, string cause) =>
        answer["causes"]!
            .AsArray()
            .SingleOrDefault(c => c!["id"]!.GetValue<string>() == cause)
            ?["probability"]!.GetValue<double>()
        ?? 0;

    private static JsonObject Put(JsonObject question, string field, JsonNode option)
    {
        var put = question.DeepClone().AsObject();
        var at = put;
        var parts = field.Split('.');
        foreach (var part in parts[..^1])
        {
            at = (at[part] ??= new JsonObject()).AsObject();
        }

        at[parts[^1]] = option.DeepClone();
        return put;
    }
}
