using System.Text;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
using Heapwright.App.Texts;
using NodaTime;

namespace Heapwright.App.Batches;

/// <summary>The record of a batch in words.</summary>
public static class BatchText
{
    /// <summary>The whole record.</summary>
    /// <param name="batch">The batch.</param>
    public static string Of(BatchRecord batch)
    {
        var (kept, measures) = (batch.Record.Kept, batch.Measures);
        var zone = kept.TimeZone();
        var text = new StringBuilder();
        text.AppendLine(
            Words.Of("batches.head", null, kept.Name, DiaryAnswers.Day(kept.BuiltAt, zone))
        );
        Figures.AppendList(
            text,
            Words.Of("batches.materials"),
            [
                .. batch.Parts.Select(p => Part(p, measures)),
                .. batch.WaterLitres > 0
                    ? [Words.Of("batches.water", null, measures.Litres(batch.WaterLitres))]
                    : Array.Empty<string>(),
            ]
        );
        Figures.AppendList(
            text,
            Words.Of("batches.diary"),
            [
                .. batch.Record.Diary.Standing.Select(s =>
                    $"{DiaryAnswers.Local(Instant.FromDateTimeOffset(s.Entry.At), zone)}  {EntryText.Of(s.Entry, measures)}"
                ),
            ]
        );
        Figures.AppendList(text, Words.Of("batches.heat"), [.. Heat(batch)]);
        Figures.AppendList(
            text,
            Words.Of("batches.used"),
            batch.Uses.IsEmpty
                ? [Words.Of("batches.used_none")]
                : [.. batch.Uses.Select(u => Use(u, zone, measures))]
        );
        if (batch.Taught is { } taught)
        {
            Figures.AppendList(
                text,
                Words.Of("batches.taught"),
                [.. taught.Rows.Select(r => r.Text), .. taught.Learned]
            );
        }

        text.AppendLine()
            .AppendLine(
                batch.Check.IsWhole
                    ? Words.Of("diary.check_whole", null, batch.Check.Entries, batch.Check.Head)
                    : Words.Of(
                        "diary.check_broken",
                        null,
                        batch.Check.FirstWrong!.Value,
                        batch.Check.Head
                    )
            );
        return text.ToString();
    }

    /// <summary>A material with its amount.</summary>
    /// <param name="part">The material.</param>
    /// <param name="measures">The units and number format.</param>
    public static string Part(BatchPart part, Measures measures) =>
        Words.Of(
            "batches.part",
            null,
            part.Ingredient.Amount.Typical.ToString("0.##", measures.Culture),
            part.Ingredient.Unit.Unit,
            part.Ingredient.Name,
            measures.Litres(part.LooseLitres),
            measures.Kilograms(part.Kilograms)
        );

    /// <summary>A bed with what went to it.</summary>
    /// <param name="use">What went to it.</param>
    /// <param name="zone">The zone of the heap.</param>
    /// <param name="measures">The units and number format.</param>
    public static string Use(BatchUse use, DateTimeZone zone, Measures measures) =>
        Words.Of(
            "batches.use",
            null,
            DiaryAnswers.Day(Instant.FromDateTimeOffset(use.At), zone),
            measures.LitresAsGiven(use.Litres),
            use.Bed
        );

    /// <summary>What the readings show of rules on heat.</summary>
    /// <param name="batch">The batch.</param>
    public static IEnumerable<string> Heat(BatchRecord batch)
    {
        if (batch.Heat is null)
        {
            yield return Words.Of("batches.heat_none");
            yield break;
        }

        foreach (var rule in batch.Verdicts)
        {
            yield return Words.Of(
                "batches.heat_line",
                null,
                Words.Of("hygiene.verdict_" + rule["verdict"]!.GetValue<string>()),
                rule["title"]!.GetValue<string>()
            );
        }
    }
}
