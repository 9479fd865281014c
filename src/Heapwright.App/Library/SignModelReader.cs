using Heapwright.Core.Diagnosis;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Library;

/// <summary>Reads the causes, the signs and the questions from data/signs.</summary>
public static class SignModelReader
{
    private static readonly Lazy<SignModel> Shipped = new(Read);
    private static readonly Lazy<IReadOnlyList<SignQuestion>> ShippedQuestions = new(ReadQuestions);

    private static readonly Lazy<IReadOnlyList<SignOutcome>> ShippedOutcomes = new(ReadOutcomes);
    private static readonly Lazy<ExpectedHeat> ShippedHeat = new(ReadHeat);

    /// <summary>The model; read once.</summary>
    public static SignModel Model => Shipped.Value;

    /// <summary>The questions that can be asked; read once.</summary>
    public static IReadOnlyList<SignQuestion> Questions => ShippedQuestions.Value;

    /// <summary>What answers to "did it help?" say; read once.</summary>
    public static IReadOnlyList<SignOutcome> Outcomes => ShippedOutcomes.Value;

    /// <summary>What the simulation expects of a good heap; read once.</summary>
    public static ExpectedHeat ExpectedHeat => ShippedHeat.Value;

    private static ExpectedHeat ReadHeat() =>
        new([
            .. DataFiles
                .Csv("expected-heat.csv")
                .Select(row => new ExpectedHeatRow(
                    row.Number("volume_m3")!.Value,
                    row.Number("air_c")!.Value,
                    row.Number("day")!.Value,
                    Spread.Of(
                        row.Number("low_c")!.Value,
                        row.Number("typical_c")!.Value,
                        row.Number("high_c")!.Value
                    )
                )),
        ]);

    private static SignModel Read() =>
        new(
            [
                .. DataFiles
                    .Csv("causes.csv")
                    .Select(row => new HeapCause(
                        row["cause"],
                        Group(row["group"]),
                        row.Number("chance") ?? 0,
                        row["healthy"] == "yes",
                        row.List("cautions"),
                        row.List("supported_by")
                    )),
            ],
            [
                .. DataFiles
                    .Csv("sign-chances.csv")
                    .Select(row => new SignRow(
                        row["field"],
                        row["word"],
                        row["given"],
                        Effect(row["effect"]),
                        row.Number("value")!.Value,
                        row.List("supported_by")
                    )),
            ],
            [
                .. DataFiles
                    .Csv("contradictions.csv")
                    .Select(row => new SignClash(
                        row["field"],
                        row.List("words"),
                        row["other_field"],
                        row.List("other_words")
                    )),
            ]
        )
        {
            Same =
            [
                .. DataFiles
                    .Csv("same-sign.csv")
                    .Select(row => new SameSign(row["group"], row["field"], row.List("words"))),
            ],
        };

    private static List<SignQuestion> ReadQuestions() =>
        [
            .. DataFiles
                .Csv("sign-questions.csv")
                .Select(row => new SignQuestion(
                    row["question"],
                    row["field"],
                    row.List("options"),
                    row.Number("ease")!.Value
                )),
        ];

    private static List<SignOutcome> ReadOutcomes() =>
        [
            .. DataFiles
                .Csv("outcomes.csv")
                .Select(row => new SignOutcome(
                    row["answer"],
                    row.Number("times")!.Value,
                    row.Number("days")!.Value
                )),
        ];

    private static CauseGroup Group(string word) =>
        word switch
        {
            "fault" => CauseGroup.Fault,
            "growth" => CauseGroup.Growth,
            "stage" => CauseGroup.Stage,
            _ => throw new InvalidOperationException("causes.csv: no group " + word),
        };

    private static SignEffect Effect(string word) =>
        word switch
        {
            "often" => SignEffect.Often,
            "times" => SignEffect.Times,
            "anyway" => SignEffect.Anyway,
            "shows" => SignEffect.Shows,
            "keeps_away" => SignEffect.KeepsAway,
            _ => throw new InvalidOperationException("sign-chances.csv: no effect " + word),
        };
}
