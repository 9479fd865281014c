using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;

namespace Heapwright.Validation;

/// <summary>Puts questions as a user would: JSON in, JSON out.</summary>
internal static class Ask
{
    public static Answer Mix(string json) => MixAnswers.Answer(Read(json));

    public static Answer Solve(string json) => SolveAnswers.Answer(Read(json));

    public static Answer Recipe(string json) => RecipeAnswers.Answer(Read(json));

    public static Answer Build(string json) => BuildAnswers.Answer(Read(json));

    public static JsonObject Guess(string json) => MaterialAnswers.Guess(Read(json));

    public static Input Read(string json) => Read(Encoding.UTF8.GetBytes(json));

    public static Input Read(byte[] utf8) => Input.Read(utf8, "question");

    public static double Typical(this JsonNode? node) => node!["typical"]!.GetValue<double>();

    public static double Low(this JsonNode? node) => node!["low"]!.GetValue<double>();

    public static double High(this JsonNode? node) => node!["high"]!.GetValue<double>();

    public static double Number(this JsonNode? node) => node!.GetValue<double>();

    public static string Word(this JsonNode? node) => node!.GetValue<string>();
}
