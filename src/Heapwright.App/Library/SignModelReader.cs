using System.Collections.Immutable;
using System.Globalization;
using Heapwright.Core.Diagnosis;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Library;

/// <summary>Reads the causes, the signs and the questions from data/signs.</summary>
public static class SignModelReader
{
    private static readonly Lazy<SignModel> Shipped = new(Read);
    private static readonly Lazy<ImmutableArray<SignQuestion>> ShippedQuestions = new(
        ReadQuestions
    );

    private static readonly Lazy<ExpectedHeat> ShippedHeat = new(ReadHeat);

    /// <summary>The model; read once.</summary>
    public static SignModel Model => Shipped.Value;

    /// <summary>The questions that can be asked; read once.</summary>
    public static ImmutableArray<SignQuestion> Questions => ShippedQuestions.Value;

    /// <summary>What the simulation expects of a good heap; read once.</summary>
    public static ExpectedHeat ExpectedHeat => ShippedHeat.Value;

    private static ExpectedHeat ReadHeat() =>
        new(
            DataFiles
                .Csv("expected-heat.csv")
                .ToDictionary(
                    row => (Number(row["volume_m3"]), Number(row["air_c"]), Number(row["day"])),
                    row =>
                        Spread.Of(
                            Number(row["low_c"]),
                            Number(row["typical_c"]),
                            Number(row["high_c"])
                        )
                )
        );

    private static SignModel Read() =>
        new(
            [
                .. DataFiles
                    .Csv("causes.csv")
                    .Select(row => new HeapCause(
                        row["cause"],
                        Enum.Parse<CauseGroup>(row["group"], ignoreCase: true),
                        row["chance"].Length == 0 ? 0 : Number(row["chance"]),
                        row["healthy"] == "yes",
                        List(row["cautions"]),
                        List(row["supported_by"])
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
                        Number(row["value"]),
                        List(row["supported_by"])
                    )),
            ],
            [
                .. DataFiles
                    .Csv("contradictions.csv")
                    .Select(row => new SignClash(
                        row["field"],
                        List(row["words"]),
                        row["other_field"],
                        List(row["other_words"])
                    )),
            ]
        );

    private static ImmutableArray<SignQuestion> ReadQuestions() =>
        [
            .. DataFiles
                .Csv("sign-questions.csv")
                .Select(row => new SignQuestion(
                    row["question"],
                    row["field"],
                    List(row["options"]),
                    Number(row["ease"])
                )),
        ];

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

    private static ImmutableArray<string> List(string cell) =>
        [.. cell.Split(';', StringSplitOptions.RemoveEmptyEntries)];

    private static double Number(string cell) =>
        double.Parse(cell, NumberStyles.Float, CultureInfo.InvariantCulture);
}
