using System.Collections.Immutable;
using System.Text;
using Heapwright.App.Contract;
using Heapwright.App.Texts;
using Heapwright.Core.Lessons;

namespace Heapwright.App.Lessons;

/// <summary>Two heaps held against each other, in words.</summary>
internal static class ComparisonText
{
    /// <summary>The whole answer.</summary>
    /// <param name="compared">The heaps.</param>
    /// <param name="first">What the first is called.</param>
    /// <param name="second">What the other is called; null where there is none.</param>
    public static string Of(ComparedHeaps compared, string first, string? second)
    {
        var text = new StringBuilder();
        text.AppendLine(
            second is null
                ? Words.Of("lessons.compare_self", null, first, Deed(compared.Without!))
                : Words.Of("lessons.compare_head", null, first, second)
        );
        foreach (var sentence in compared.Sentences)
        {
            text.AppendLine(sentence);
        }

        Figures.AppendList(text, Words.Of("lessons.figures"), compared.Figures);
        Figures.AppendList(
            text,
            Words.Of("lessons.differs"),
            [.. compared.Table.Where(r => !r.IsSame).Select(Line)]
        );
        Figures.AppendList(
            text,
            Words.Of("lessons.same"),
            [.. compared.Table.Where(r => r.IsSame).Select(Line)]
        );
        text.AppendLine().AppendLine(Words.Of("lessons.compare_honesty"));
        Figures.AppendList(text, Words.Of("quantities.assumed"), compared.Assumptions);
        MaterialCautions.Append(text, compared.Cautions);
        return text.ToString();
    }

    /// <summary>The word for what is not done.</summary>
    /// <param name="without">The deed.</param>
    public static string Deed(string without) => Words.Of("lessons.without_" + without);

    /// <summary>The verdict and what it rests on.</summary>
    /// <param name="compared">The heaps.</param>
    public static ImmutableArray<string> Sentences(ComparedHeaps compared)
    {
        var measures = compared.Measures;
        var f = compared.Deciding;
        var name = LessonWords.Name(compared.Decides, measures);
        var said = ImmutableArray.CreateBuilder<string>();
        var kinds = string.Join(
            ", ",
            compared.Changed.Select(k => Words.Of("lessons.kind_" + LessonWords.Of(k)))
        );
        if (f.Why is { } why)
        {
            said.Add(Words.Of("lessons.tell_not", null, name, measures.Say(why)));
            return said.ToImmutable();
        }

        if (compared.Without is not null)
        {
            said.Add(
                Words.Of(
                    f.EffectVerdict == ComparisonVerdict.MoreThanChance
                        ? "lessons.self_more"
                        : "lessons.self_cannot",
                    null,
                    name,
                    Deed(compared.Without),
                    LessonWords.Difference(f.Figure, f.Effect.Low, measures),
                    LessonWords.Difference(f.Figure, f.Effect.High, measures),
                    LessonWords.Difference(f.Figure, f.Effect.Typical, measures)
                )
            );
            return said.ToImmutable();
        }

        said.Add(
            Words.Of(
                compared.Cause switch
                {
                    "the_change" => "lessons.more_one",
                    "confounded" => "lessons.more_confounded",
                    "not_told" => "lessons.more_not_told",
                    _ => "lessons.chance",
                },
                null,
                name,
                kinds
            )
        );
        if (f is { OtherRead: { } other, Chance: { } chance })
        {
            said.Add(
                Words.Of(
                    "lessons.rests_on",
                    null,
                    LessonWords.Value(compared.Decides, other, measures),
                    LessonWords.Range(compared.Decides, chance, measures)
                )
            );
        }

        if (compared.Changed.Length > 1 && compared.Cause is null)
        {
            said.Add(Words.Of("lessons.confounded", null, kinds));
        }

        if (f.EffectVerdict != ComparisonVerdict.NothingChanged)
        {
            said.Add(
                Words.Of(
                    f.EffectVerdict == ComparisonVerdict.MoreThanChance
                        ? "lessons.model_sure"
                        : "lessons.model_unsure",
                    null,
                    LessonWords.Difference(f.Figure, f.Effect.Low, measures),
                    LessonWords.Difference(f.Figure, f.Effect.High, measures),
                    LessonWords.Difference(f.Figure, f.Effect.Typical, measures)
                )
            );
        }

        return said.ToImmutable();
    }

    /// <summary>One figure in a sentence.</summary>
    /// <param name="compared">The heaps.</param>
    /// <param name="f">The figure.</param>
    public static string Figure(ComparedHeaps compared, ComparedFigure f)
    {
        var measures = compared.Measures;
        var word = LessonWords.Of(f.Figure);
        var name = LessonWords.Name(word, measures);
        if (f.Why is { } why)
        {
            return Words.Of("lessons.untold", null, name, measures.Say(why));
        }

        string Effect(string code) =>
            Words.Of(
                code,
                null,
                name,
                f.Read is { } read ? LessonWords.Value(word, read, measures) : "",
                LessonWords.Difference(f.Figure, f.Effect.Low, measures),
                LessonWords.Difference(f.Figure, f.Effect.High, measures),
                f.OtherRead is { } other ? LessonWords.Value(word, other, measures) : "",
                f.Chance is { } chance ? LessonWords.Range(word, chance, measures) : "",
                Words.Of("lessons.said_" + LessonWords.Of(f.Verdict))
            );
        return Effect(f.Chance is null ? "lessons.figure_self" : "lessons.figure");
    }

    /// <summary>A row of the table of differences.</summary>
    /// <param name="d">The difference.</param>
    /// <param name="measures">The measures.</param>
    public static (string What, string First, string Second, bool IsSame) Row(
        HeapDifference d,
        Measures measures
    )
    {
        var what =
            Words.TryOf("lessons.row_" + d.What) ?? Words.Of("lessons.share_of", null, d.What);
        string Days(ImmutableArray<double> days) =>
            days.IsEmpty
                ? Words.Of("lessons.not_done")
                : string.Join(", ", days.Select(x => Words.Of("lessons.day", measures.Culture, x)));
        string Of(double? value, ImmutableArray<double> days) =>
            (d.What, value) switch
            {
                ("cover", _) when days.Length == 1 => Words.Of(
                    d.IsSame || d.FirstDays.Length != d.SecondDays.Length
                        ? "lessons.from_the_start"
                        : "lessons.walls_differ"
                ),
                ("turns" or "additions" or "cover", _) => Days(days),
                ("water_l", { } v) when days.Length > 0 => Words.Of(
                    "lessons.poured",
                    null,
                    measures.Litres(v),
                    Days(days)
                ),
                ("water_l", _) => Days(days),
                ("walls", _) => Words.Of(d.IsSame ? "lessons.walls_same" : "lessons.walls_differ"),
                ("start_c" or "air_c", { } v) => measures.Celsius(v),
                ("filled_volume_l" or "bin_volume_l", { } v) => measures.Litres(v),
                ("carbon_nitrogen_ratio", { } v) => Contract.Figures.One(v, measures.Culture),
                (_, { } v) => Words.Of("lessons.percent", measures.Culture, v),
                _ => "",
            };
        return (what, Of(d.First, d.FirstDays), Of(d.Second, d.SecondDays), d.IsSame);
    }

    private static string Line((string What, string First, string Second, bool IsSame) row) =>
        row.IsSame && row.First == row.Second
            ? Words.Of("lessons.line_same", null, row.What, row.First)
            : Words.Of("lessons.line", null, row.What, row.First, row.Second);
}
