using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;

namespace Heapwright.Validation;

/// <summary>Puts questions as a user would: JSON in, JSON out.</summary>
internal static class Ask
{
    public static Answer Mix(string json) => MixAnswers.Answer(Read(json));

    public static Answer Solve(string json) => SolveAnswers.Answer(Read(json));

    public static double Typical(this JsonNode? node) => node!["typical"]!.GetValue<double>();

    public static double Number(this JsonNode? node) => node!.GetValue<double>();

    private static Input Read(string json) => Input.Read(Encoding.UTF8.GetBytes(json), "question");
}
