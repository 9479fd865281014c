using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Texts;
using Heapwright.Core.Lessons;

namespace Heapwright.App.Lessons;

/// <summary>Two heaps held against each other, ready to be shown.</summary>
public sealed record ComparedHeaps
{
    /// <summary>The comparison.</summary>
    public required HeapComparison Comparison { get; init; }

    /// <summary>What differs and what stayed the same.</summary>
    public required ImmutableArray<HeapDifference> Differences { get; init; }

    /// <summary>The word of the figure that decides.</summary>
    public required string Decides { get; init; }

    /// <summary>What is not done, where a heap is held against itself.</summary>
    public string? Without { get; init; }

    /// <summary>The measures of the sentences.</summary>
    public required Measures Measures { get; init; }

    /// <summary>What was assumed.</summary>
    public required ImmutableArray<string> Assumptions { get; init; }

    /// <summary>The cautions, as in answers.</summary>
    public required JsonArray Cautions { get; init; }

    /// <summary>The kinds in which they differ.</summary>
    public ImmutableArray<DifferenceKind> Changed => HeapDifferences.Changed(Differences);

    /// <summary>The figure that decides.</summary>
    public ComparedFigure Deciding =>
        Comparison.Figures.First(f => LessonWords.Of(f.Figure) == Decides);

    /// <summary>The verdict: more_than_chance, cannot_tell or nothing_changed.</summary>
    public string Verdict => LessonWords.Of(Deciding.Verdict);

    /// <summary>
    /// What made the difference, where it is more than chance: the_change, confounded (several things differ) or not_told
    /// (nothing that was told differs); null where it is not.
    /// </summary>
    public string? Cause =>
        Deciding.Verdict != ComparisonVerdict.MoreThanChance ? null
        : Without is not null ? "the_change"
        : Changed.Length switch
        {
            0 => "not_told",
            1 => "the_change",
            _ => "confounded",
        };

    /// <summary>The answer in sentences: the verdict first, then what it rests on.</summary>
    public ImmutableArray<string> Sentences => ComparisonText.Sentences(this);

    /// <summary>The table of differences: what, first, second, whether it is the same.</summary>
    public ImmutableArray<(string What, string First, string Second, bool IsSame)> Table =>
        [.. Differences.Select(d => ComparisonText.Row(d, Measures))];

    /// <summary>The figures in sentences, that which decides first.</summary>
    public ImmutableArray<string> Figures =>
        [
            .. Comparison
                .Figures.OrderByDescending(f => LessonWords.Of(f.Figure) == Decides)
                .Select(f => ComparisonText.Figure(this, f)),
        ];

    /// <summary>The answer.</summary>
    /// <param name="first">What the first heap is called.</param>
    /// <param name="second">What the other is called; null where there is none.</param>
    public Answer Answer(string first, string? second) =>
        new(
            new JsonObject
            {
                ["schema"] = Json.Schema,
                ["first"] = first,
                ["second"] = second,
                ["without"] = Without,
                ["compared_to_day"] = Comparison.LastDay,
                ["decides"] = Decides,
                ["verdict"] = Verdict,
                ["cause"] = Cause,
                ["changed"] = Json.Of(Changed.Select(LessonWords.Of)),
                ["differences"] = new JsonArray([.. Differences.Select(d => (JsonNode)Of(d))]),
                ["figures"] = new JsonArray([.. Comparison.Figures.Select(f => (JsonNode)Of(f))]),
                ["share_held_72h_at_55_pct_effect"] = Json.Of(Comparison.ShareHeldEffect),
                ["sentences"] = Json.Of(Sentences),
                ["assumptions"] = Json.Of(Assumptions),
                ["cautions"] = Cautions.DeepClone(),
            },
            Yes: true,
            ComparisonText.Of(this, first, second)
        );

    private static JsonObject Of(HeapDifference d) =>
        new()
        {
            ["kind"] = LessonWords.Of(d.Kind),
            ["what"] = d.What,
            ["first"] = Json.Of(d.First),
            ["second"] = Json.Of(d.Second),
            ["first_days"] = new JsonArray([.. d.FirstDays.Select(x => (JsonNode)x)]),
            ["second_days"] = new JsonArray([.. d.SecondDays.Select(x => (JsonNode)x)]),
            ["same"] = d.IsSame,
        };

    private JsonObject Of(ComparedFigure f) =>
        new()
        {
            ["figure"] = LessonWords.Of(f.Figure),
            ["first_read"] = Json.Of(f.Read),
            ["second_read"] = Json.Of(f.OtherRead),
            ["second_if_nothing_changed"] = Json.Of(f.Chance),
            ["verdict"] = LessonWords.Of(f.Verdict),
            ["first_fitted"] = Json.Of(f.Unchanged),
            ["first_with_the_change"] = Json.Of(f.Changed),
            ["effect"] = Json.Of(f.Effect),
            ["effect_verdict"] = LessonWords.Of(f.EffectVerdict),
            ["why"] = f.Why is null ? null : Measures.Say(f.Why),
        };
}
