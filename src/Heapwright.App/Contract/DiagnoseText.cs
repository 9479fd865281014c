using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Texts;
using Heapwright.Core.Diagnosis;

namespace Heapwright.App.Contract;

/// <summary>The answer to <c>diagnose</c> in words.</summary>
internal static class DiagnoseText
{
    private const double Likely = 0.5;
    private const double Maybe = 0.25;
    private const double Possible = 0.08;
    private const int MostInFull = 2;
    private const int MostBeside = 4;
    private const int MostAsked = 2;
    private const int MostSources = 3;

    public static string Of(DiagnoseTold told, Assumptions assumptions, JsonArray cautions)
    {
        var words = told.Words;
        var text = new StringBuilder();
        var healthy = told.Found.Healthy;
        text.AppendLine(
            words.Say(
                healthy >= Likely ? "healthy_yes"
                    : healthy >= Maybe ? "healthy_maybe"
                    : "healthy_no",
                words.Hundredths(healthy)
            )
        );
        var full = told.Listed.Where(c => c.Probability >= Maybe).Take(MostInFull).ToList();
        foreach (var cause in full)
        {
            Full(text, cause, told);
        }

        if (full.Count == 0 || full[0].Probability < Likely)
        {
            text.AppendLine().AppendLine(words.Say("not_sure"));
        }

        Figures.AppendList(
            text,
            words.Say("heading_also"),
            [
                .. told
                    .Listed.Skip(full.Count)
                    .Where(c => c.Probability >= Possible)
                    .Take(MostBeside)
                    .Select(c => Line(c, words)),
            ]
        );
        Figures.AppendList(
            text,
            words.Say("heading_ask"),
            [.. told.Found.AskNext.Take(MostAsked).Select(q => Ask(q.Question, words))]
        );
        Figures.AppendList(text, words.Say("heading_contradict"), [.. told.Contradictions]);
        Figures.AppendList(text, Words.Of("quantities.assumed"), assumptions.All);
        MaterialCautions.Append(text, cautions);
        return text.ToString();
    }

    private static void Full(StringBuilder text, CauseFound cause, DiagnoseTold told)
    {
        var (id, words) = (cause.Cause.Id, told.Words);
        text.AppendLine().AppendLine(Line(cause, words));
        void Add(string heading, string sentence) =>
            text.Append("  ").AppendLine(words.Say(heading, sentence));
        if (!cause.For.IsEmpty)
        {
            Add("heading_because", string.Join("; ", cause.For.Take(4).Select(words.Fact)));
        }

        if (!cause.Against.IsEmpty)
        {
            Add("heading_against", string.Join("; ", cause.Against.Take(2).Select(words.Fact)));
        }

        Add("heading_tell", words.Of(id, "tell")!);
        Add("heading_now", words.Of(id, "now")!);
        Add("heading_properly", told.Properly(id));
        if (told.Amounts.Unknown(id) is { } unknown)
        {
            text.Append("  ").AppendLine(unknown);
        }

        Add("heading_watch", words.Of(id, "watch")!);
        if (words.Of(id, "disagree") is { } disagree)
        {
            text.Append("  ").AppendLine(disagree);
        }

        Add(
            "heading_sources",
            string.Join("; ", cause.Sources.Take(MostSources).Select(words.Source))
        );
    }

    private static string Line(CauseFound cause, DiagnoseWording words) =>
        words.Say(
            "cause_line",
            words.Of(cause.Cause.Id, "name")!,
            words.Hundredths(cause.Probability)
        );

    private static string Ask(SignQuestion question, DiagnoseWording words) =>
        words.Ask(question)
        + " ("
        + string.Join(
            ", ",
            question
                .Options.Select(o =>
                    question.Field == "heap.age_days"
                        ? DiagnoseWording
                            .Number(o)
                            .ToString("0", System.Globalization.CultureInfo.InvariantCulture)
                        : words.Word(question.Field, o)
                )
                .Append(words.Say("dont_know"))
        )
        + ")";
}
