using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Texts;

namespace Heapwright.Cli.Files;

/// <summary>A question whose seed was given beside it: the seed joins the fields, so that a command looks in one place.</summary>
internal static class SeededQuestion
{
    /// <summary>Reads a question and gives it a seed.</summary>
    /// <param name="bytes">The question as it stands in its file.</param>
    /// <param name="name">The name of the file in messages.</param>
    /// <param name="seed">The seed.</param>
    /// <exception cref="InputProblem">It is no JSON document, or has a seed already.</exception>
    public static Input Read(ReadOnlyMemory<byte> bytes, string name, int seed)
    {
        var question = Input.Read(bytes, name);
        if (!question.IsObject)
        {
            return question;
        }

        var fields = JsonNode
            .Parse(Encoding.UTF8.GetString(bytes.Span).TrimStart('\uFEFF'))!
            .AsObject();
        if (!fields.TryAdd("seed", seed))
        {
            throw new InputProblem(name, "seed", Words.Of("cli.seed_twice"));
        }

        return Input.Read(Encoding.UTF8.GetBytes(fields.ToJsonString()), name);
    }
}
