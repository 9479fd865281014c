using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;

namespace Heapwright.App.Tests.Contract;

/// <summary>Puts questions as they come from outside.</summary>
internal static class Asking
{
    /// <summary>A question in JSON.</summary>
    public static Input Of(string json) => Input.Read(Encoding.UTF8.GetBytes(json), "question");

    /// <summary>The sentence with which a question is refused.</summary>
    public static string Refusal(string json, Func<Input, Answer> answer) =>
        Assert.Throws<InputProblem>(() => answer(Of(json))).Message;

    /// <summary>A number in an answer, or the typical one of three.</summary>
    public static double Typical(this JsonNode node, string field) =>
        node[field] is JsonObject three
            ? three["typical"]!.GetValue<double>()
            : node[field]!.GetValue<double>();

    /// <summary>The texts of a list.</summary>
    public static string[] Texts(this JsonNode node, string field) =>
        [.. node[field]!.AsArray().Select(t => t!.GetValue<string>())];
}
