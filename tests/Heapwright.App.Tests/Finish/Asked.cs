using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Texts;

namespace Heapwright.App.Tests.Finish;

/// <summary>Asks <c>finish</c>.</summary>
internal static class Asked
{
    public static Answer Of(string json, Measures? measures = null) =>
        FinishAnswers.Answer(
            Input.Read(Encoding.UTF8.GetBytes(json), "finish.json"),
            measures: measures
        );

    public static JsonObject Json(string json) => Of(json).Json;

    public static string Wrong(string json) => Assert.Throws<InputProblem>(() => Of(json)).Message;

    public static string? Class(this JsonObject answer, string scale) =>
        answer["classes"]!
            .AsArray()
            .SingleOrDefault(c => c!["scale"]!.GetValue<string>() == scale)
            ?["class"]!.GetValue<string>();

    public static JsonNode Use(this JsonObject answer, string use) =>
        answer["ready_for"]!.AsArray().Single(u => u!["use"]!.GetValue<string>() == use)!;

    public static string Ready(this JsonObject answer, string use) =>
        answer.Use(use)["ready"]!.GetValue<string>();

    public static double Typical(this JsonNode? node) => node!["typical"]!.GetValue<double>();

    public static void IsExactly(this JsonNode? node, double value, double tolerance)
    {
        Assert.Equal(value, node!["low"]!.GetValue<double>(), tolerance);
        Assert.Equal(value, node["typical"]!.GetValue<double>(), tolerance);
        Assert.Equal(value, node["high"]!.GetValue<double>(), tolerance);
    }
}
