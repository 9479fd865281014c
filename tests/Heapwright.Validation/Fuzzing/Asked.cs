using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;

namespace Heapwright.Validation.Fuzzing;

/// <summary>A question put to a command: the answer, or the one sentence that says what is wrong.</summary>
internal sealed record Asked(JsonObject? Json, string? Text, InputProblem? Problem)
{
    // Small enough that a thousand of them are asked in a minute.
    private static readonly SimulateLimits Simulated = new()
    {
        MostMembers = 8,
        MostMemberDays = 16,
    };

    // A fit needs its members; short and few days keep it quick.
    private static readonly SimulateLimits Forecast = new()
    {
        MostMembers = 200,
        MostMemberDays = 800,
    };

    /// <summary>Whether the question itself holds the words for numbers that are none, as a name may.</summary>
    private bool SaysNaN { get; init; }

    public static Asked Of(string command, byte[] utf8)
    {
        var said = Encoding.UTF8.GetString(utf8);
        return Put(command, utf8) with
        {
            SaysNaN =
                said.Contains("NaN", StringComparison.Ordinal)
                || said.Contains("Infinity", StringComparison.Ordinal),
        };
    }

    private static Asked Put(string command, byte[] utf8)
    {
        try
        {
            var input = Ask.Read(utf8);
            if (command == "guess")
            {
                return new Asked(MaterialAnswers.Guess(input), null, null);
            }

            var answer = command switch
            {
                "mix" => MixAnswers.Answer(input),
                "solve" => SolveAnswers.Answer(input),
                "recipe" => RecipeAnswers.Answer(input),
                "simulate" => SimulateAnswers.Answer(
                    input,
                    Simulated,
                    cancellation: TestContext.Current.CancellationToken
                ),
                "forecast" => ForecastAnswers.Answer(
                    input,
                    Forecast,
                    cancellation: TestContext.Current.CancellationToken
                ),
                "diagnose" => DiagnoseAnswers.Answer(input),
                "hygiene" => HygieneAnswers.Answer(input),
                "finish" => FinishAnswers.Answer(input),
                _ => BuildAnswers.Answer(input),
            };
            return new Asked(answer.Json, answer.Text, null);
        }
        catch (InputProblem problem)
        {
            return new Asked(null, null, problem);
        }
    }

    /// <summary>What the contract promises of every answer and every refusal.</summary>
    public void Check()
    {
        if (Problem is not null)
        {
            CheckSentence(Problem);
            return;
        }

        Assert.Equal(1, Json!["schema"]!.GetValue<int>());
        Assert.IsType<JsonArray>(Json["assumptions"]);
        Assert.IsType<JsonArray>(Json["cautions"]);
        CheckNumbers(Json, "answer");
        // The answer goes out as bytes and must come back as the same document.
        using var document = JsonDocument.Parse(AnswerBytes.Of(Json));
        Assert.Equal(JsonValueKind.Object, document.RootElement.ValueKind);
        foreach (var text in SaysNaN ? [] : Texts(Json).Append(Text ?? ""))
        {
            Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
            Assert.DoesNotContain("Infinity", text, StringComparison.Ordinal);
            Assert.DoesNotContain('∞', text);
        }
    }

    private static void CheckSentence(InputProblem problem)
    {
        var sentence = problem.Message;
        Assert.InRange(sentence.Length, 20, 600);
        Assert.StartsWith("question: ", sentence, StringComparison.Ordinal);
        Assert.DoesNotContain(sentence, char.IsControl);
        Assert.DoesNotContain('\u2028', sentence);
        Assert.DoesNotContain('\u2029', sentence);
        Assert.DoesNotContain("Exception", sentence, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", sentence, StringComparison.Ordinal);
    }

    private static void CheckNumbers(JsonNode node, string place)
    {
        switch (node)
        {
            case JsonObject fields:
                foreach (var (name, value) in fields.Where(f => f.Value is not null))
                {
                    CheckNumbers(value!, $"{place}.{name}");
                }

                if (fields.ContainsKey("typical"))
                {
                    // A mark that is not reached is null: later than any day.
                    double End(string name) =>
                        fields[name] is { } end ? end.Number() : double.PositiveInfinity;
                    var ends = (End("low"), End("typical"), End("high"));
                    Assert.True(
                        ends.Item1 <= ends.Item2 && ends.Item2 <= ends.Item3,
                        $"{place}: {ends}"
                    );
                    Assert.True(
                        double.IsFinite(ends.Item3) || fields.ContainsKey("share_reaching"),
                        $"{place}: {ends}"
                    );
                }

                break;
            case JsonArray items:
                foreach (var item in items.Where(i => i is not null))
                {
                    CheckNumbers(item!, place + "[]");
                }

                break;
            case JsonValue value when value.TryGetValue<double>(out var number):
                Assert.True(double.IsFinite(number), $"{place} is {number}");
                break;
            default:
                break;
        }
    }

    private static IEnumerable<string> Texts(JsonNode? node) =>
        node switch
        {
            JsonObject fields => fields.SelectMany(f => Texts(f.Value)),
            JsonArray items => items.SelectMany(Texts),
            JsonValue value when value.TryGetValue<string>(out var text) => [text],
            _ => [],
        };
}
