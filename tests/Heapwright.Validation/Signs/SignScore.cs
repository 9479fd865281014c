using System.Globalization;
using System.Text.Json.Nodes;

namespace Heapwright.Validation.Signs;

/// <summary>How a case was answered.</summary>
internal sealed record SignScore(SignCase Case, JsonObject Answer)
{
    private static readonly Lazy<IReadOnlyList<SignScore>> OfWritten = new(() =>
        [.. SignCase.Written.Select(Of)]
    );

    /// <summary>The written cases, answered once.</summary>
    public static IReadOnlyList<SignScore> Written => OfWritten.Value;

    public static SignScore Of(SignCase told) => new(told, SignCase.Answer(told.Question));

    private string[] Causes =>
        [.. Answer["causes"]!.AsArray().Select(c => c!["id"]!.GetValue<string>())];

    public bool FirstIsRight => Case.First.Contains(Causes[0], StringComparer.Ordinal);

    public bool WithinTwo =>
        Causes.Take(2).Any(c => Case.WithinTwo.Contains(c, StringComparer.Ordinal));

    public bool FirstIsWrong => Case.Wrong.Contains(Causes[0], StringComparer.Ordinal);

    public double FirstChance => Answer["causes"]!.AsArray()[0]!["probability"]!.GetValue<double>();

    public double Healthy => Answer["healthy_probability"]!.GetValue<double>();

    public override string ToString() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Case.Id}{(FirstIsWrong ? " WRONG" : "")}: wanted {string.Join('/', Case.First)} ({string.Join('/', Case.WithinTwo)}), got {string.Join(", ", Answer["causes"]!.AsArray().Take(4).Select(c => $"{c!["id"]} {c["probability"]!.GetValue<double>():0.00}"))}, healthy {Healthy:0.00} ({Case.Healthy?.ToString() ?? "?"}) {Case.Question.ToJsonString()}"
        );
}
