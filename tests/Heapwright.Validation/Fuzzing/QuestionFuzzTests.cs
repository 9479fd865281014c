using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;

namespace Heapwright.Validation.Fuzzing;

/// <summary>
/// Questions that went wrong on the way: whatever comes in, an answer or one clear sentence comes out, never a fault of the
/// program. HEAPWRIGHT_FUZZ names how many questions are made (700), HEAPWRIGHT_FUZZ_SEED from which seed (1).
/// </summary>
public class QuestionFuzzTests(ITestOutputHelper output)
{
    private static readonly int Count = Setting("HEAPWRIGHT_FUZZ", 700);
    private static readonly int Seed = Setting("HEAPWRIGHT_FUZZ_SEED", 1);

    [Fact]
    public void Questions_Unharmed_AreAnswered()
    {
        foreach (var (command, json) in Questions.All)
        {
            var asked = Asked.Of(command, Encoding.UTF8.GetBytes(json));
            Assert.True(asked.Problem is null, $"{command}: {asked.Problem?.Message}");
            asked.Check();
        }
    }

    [Fact]
    public void Questions_ChangedInOnePlace_GetAnAnswerOrOneSentence()
    {
        var (answered, refused) = (0, 0);
        for (var i = 0; i < Count; i++)
        {
            var random = new Random(Seed + i);
            var (command, json) = Questions.All[random.Next(Questions.All.Length)];
            var mutation = TreeMutation.Of(json, random);
            var asked = Put(command, mutation, Seed + i);
            _ = asked.Problem is null ? answered++ : refused++;
        }

        output.WriteLine($"seed {Seed}: {Count} questions, {answered} answered, {refused} refused");
        // Both ways out are walked, so the test is one of both.
        Assert.True(answered > Count / 20);
        Assert.True(refused > Count / 4);
    }

    [Fact]
    public void Questions_WithBytesBroken_GetAnAnswerOrOneSentence()
    {
        var (answered, refused) = (0, 0);
        for (var i = 0; i < Count; i++)
        {
            var random = new Random(Seed + i);
            var (command, json) = Questions.All[random.Next(Questions.All.Length)];
            var bytes = ByteMutation.Of(Encoding.UTF8.GetBytes(json), random);
            var asked = Put(command, bytes, $"bytes, seed {Seed + i}");
            _ = asked.Problem is null ? answered++ : refused++;
        }

        output.WriteLine($"seed {Seed}: {Count} questions, {answered} answered, {refused} refused");
        Assert.True(refused > Count / 4);
    }

    // A slip of the fingers in a field's name is refused, and the right name is offered.
    [Fact]
    public void Questions_EveryFieldMisspelt_OfferTheRightName()
    {
        var tried = 0;
        foreach (var (command, json) in Questions.All)
        {
            foreach (var (_, key, place) in TreeMutation.Places(JsonNode.Parse(json)!))
            {
                // In a name of one or two letters a slip is as near to another name.
                if (
                    key is not string { Length: > 2 } name
                    || place.StartsWith("containers.", StringComparison.Ordinal)
                        && place.Count(c => c == '.') == 1
                )
                {
                    continue;
                }

                foreach (var wrong in (string[])[name + "s", name[1..], "x" + name])
                {
                    // "target" and "targets" both exist.
                    if (wrong is "" or "target" or "targets" || Known(json, place, wrong))
                    {
                        continue;
                    }

                    tried++;
                    var problem = Put(
                        command,
                        Renamed(json, place, wrong),
                        $"{place} as {wrong}"
                    ).Problem;
                    Assert.True(
                        problem is not null,
                        $"{command}: {place} written {wrong} was ignored"
                    );
                    Assert.Contains(
                        $"\"{wrong}\" is not known",
                        problem.Message,
                        StringComparison.Ordinal
                    );
                    Assert.Contains(
                        $"nearest is \"{name}\"",
                        problem.Message,
                        StringComparison.Ordinal
                    );
                    Assert.Equal(Owner(place), problem.Place);
                }
            }
        }

        output.WriteLine($"{tried} misspelt names");
        Assert.True(tried > 200);
    }

    // A value of a wrong kind is named at its place, or at the object around it.
    [Fact]
    public void Questions_EveryValueOfAWrongKind_AreRefusedAtItsPlace()
    {
        var tried = 0;
        foreach (var (command, json) in Questions.All)
        {
            foreach (var (_, _, place) in TreeMutation.Places(JsonNode.Parse(json)!).ToList())
            {
                // What an answer of ours says besides the amounts is passed over when it is built from.
                if (
                    place is "status" or "plans[0].cost" or "plans[0].notes" or "plans[0].number"
                    || place.EndsWith("].l", StringComparison.Ordinal)
                    || place.EndsWith("].kg", StringComparison.Ordinal)
                )
                {
                    continue;
                }

                foreach (var wrong in (string[])["[[1]]", "{\"zzq\":1}", "true", "1e400"])
                {
                    if (place == "containers" && wrong == "{\"zzq\":1}")
                    {
                        continue;
                    }

                    if (
                        wrong == "true"
                        && JsonNode.Parse(json)!.At(place) is JsonValue v
                        && v.TryGetValue<bool>(out _)
                    )
                    {
                        continue;
                    }

                    tried++;
                    var problem = Put(
                        command,
                        Replaced(json, place, wrong),
                        $"{place} = {wrong}"
                    ).Problem;
                    Assert.True(problem is not null, $"{command}: {place} = {wrong} was taken");
                    var found = problem.Place;
                    Assert.True(
                        place.StartsWith(found, StringComparison.Ordinal)
                            || found.StartsWith(place, StringComparison.Ordinal),
                        $"{command}: {place} = {wrong} was blamed on {problem.Message}"
                    );
                }
            }
        }

        output.WriteLine($"{tried} values of a wrong kind");
    }

    private static Asked Put(string command, TreeMutation mutation, int seed) =>
        Put(
            command,
            Encoding.UTF8.GetBytes(mutation.Json),
            $"{mutation.What} at {mutation.Place}, seed {seed}"
        );

    private static Asked Put(string command, string json, string what) =>
        Put(command, Encoding.UTF8.GetBytes(json), what);

    private static Asked Put(string command, byte[] utf8, string what)
    {
        try
        {
            var asked = Asked.Of(command, utf8);
            asked.Check();
            return asked;
        }
        catch (Exception fault)
        {
            var shown = Encoding.UTF8.GetString(utf8);
            throw new InvalidOperationException(
                $"{command}, {what}: {(shown.Length > 1500 ? shown[..1500] : shown)}",
                fault
            );
        }
    }

    private static string Owner(string place)
    {
        var dot = place.LastIndexOf('.');
        return dot < 0 ? "" : place[..dot];
    }

    // Whether the slip makes another field that exists there.
    private static bool Known(string json, string place, string wrong) =>
        JsonNode.Parse(json)!.At(Owner(place))!.AsObject().ContainsKey(wrong);

    private static string Renamed(string json, string place, string wrong)
    {
        var tree = JsonNode.Parse(json)!;
        var owner = tree.At(Owner(place))!.AsObject();
        var name = place[(place.LastIndexOf('.') + 1)..];
        var value = owner[name]?.DeepClone();
        owner.Remove(name);
        owner[wrong] = value;
        return tree.ToJsonString();
    }

    private static string Replaced(string json, string place, string value)
    {
        var tree = JsonNode.Parse(json)!;
        tree.At(place)?.ReplaceWith("@here@");
        if (tree.At(place) is null)
        {
            tree.At(Owner(place))!.AsObject()[place[(place.LastIndexOf('.') + 1)..]] = "@here@";
        }

        return tree.ToJsonString().Replace("\"@here@\"", value, StringComparison.Ordinal);
    }

    private static int Setting(string name, int usual) =>
        int.TryParse(
            Environment.GetEnvironmentVariable(name),
            NumberStyles.None,
            CultureInfo.InvariantCulture,
            out var own
        )
            ? own
            : usual;
}
