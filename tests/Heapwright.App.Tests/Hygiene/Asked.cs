using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Texts;

namespace Heapwright.App.Tests.Hygiene;

/// <summary>Asks <c>hygiene</c>.</summary>
internal static class Asked
{
    public static Answer Json(JsonObject question) =>
        HygieneAnswers.Answer(
            Input.Read(Encoding.UTF8.GetBytes(question.ToJsonString()), "log.json")
        );

    public static HygieneAnswer Table(
        string text,
        string? process = "windrow",
        string? rules = null,
        Measures? measures = null
    ) =>
        HygieneAnswers.Answer(
            Encoding.UTF8.GetBytes(text),
            "log.csv",
            new HygieneOptions(process, Rules: rules?.Split(',')),
            measures
        );

    public static JsonObject Question(
        string process,
        IEnumerable<JsonObject> readings,
        params double[] turns
    ) =>
        new()
        {
            ["process"] = process,
            ["readings"] = new JsonArray([.. readings]),
            ["turns"] = new JsonArray([.. turns.Select(t => (JsonNode)t)]),
        };

    public static JsonObject Reading(double day, double celsius, string probe = "core") =>
        new()
        {
            ["day"] = day,
            ["probe"] = probe,
            ["temperature_c"] = celsius,
        };

    public static IEnumerable<JsonObject> Daily(int from, int to, double celsius) =>
        Enumerable.Range(from, to - from + 1).Select(d => Reading(d, celsius));

    public static JsonNode Rule(this Answer answer, string rule) =>
        answer.Json["rules"]!.AsArray().Single(r => r!["rule"]!.GetValue<string>() == rule)!;

    public static string Verdict(this Answer answer, string rule) =>
        answer.Rule(rule)["verdict"]!.GetValue<string>();

    public static string Text(double value) => value.ToString(CultureInfo.InvariantCulture);
}
