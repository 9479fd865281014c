using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
using Heapwright.App.Library;
using Heapwright.App.Texts;
using NodaTime;

namespace Heapwright.App.Batches;

/// <summary>The record of a batch in words.</summary>
public static class BatchText
{
    /// <summary>The whole record.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="finish">How far it has come; null where that is not known.</param>
    public static string Of(BatchRecord batch, Answer? finish)
    {
        ArgumentNullException.ThrowIfNull(batch);
        var (kept, measures) = (batch.Record.Kept, batch.Measures);
        var zone = kept.TimeZone();
        var text = new StringBuilder();
        text.AppendLine(
            Words.Of("batches.head", null, kept.Name, DiaryAnswers.Day(kept.BuiltAt, zone))
        );
        var sections = Sections(batch, finish).ToArray();
        Figures.AppendList(text, sections[0].Heading, sections[0].Lines);
        Figures.AppendList(
            text,
            Words.Of("batches.diary"),
            [
                .. batch.Record.Diary.Standing.Select(s =>
                    $"{DiaryAnswers.Local(Instant.FromDateTimeOffset(s.Entry.At), zone)}  {EntryText.Of(s.Entry, measures)}"
                ),
            ]
        );
        foreach (var (heading, lines) in sections.Skip(1))
        {
            Figures.AppendList(text, heading, lines);
        }

        return text.AppendLine().AppendLine(Chain(batch)).ToString();
    }

    /// <summary>Everything but the diary, under its headings; what went in comes first.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="finish">How far it has come; null where that is not known.</param>
    public static IEnumerable<(string Heading, IReadOnlyList<string> Lines)> Sections(
        BatchRecord batch,
        Answer? finish
    )
    {
        ArgumentNullException.ThrowIfNull(batch);
        var measures = batch.Measures;
        yield return (
            Words.Of("batches.materials"),
            [
                .. batch.Parts.Select(p => Part(p, measures)),
                .. batch.WaterLitres > 0
                    ? [Words.Of("batches.water", null, measures.Litres(batch.WaterLitres))]
                    : Array.Empty<string>(),
            ]
        );
        yield return (Words.Of("batches.flags"), [.. Flags(batch)]);
        yield return (Words.Of("batches.heat"), [.. Heat(batch)]);
        if (finish is not null)
        {
            yield return (Words.Of("batches.finish"), [.. Finish(finish)]);
        }

        yield return (
            Words.Of("batches.used"),
            batch.Uses.IsEmpty
                ? [Words.Of("batches.used_none")]
                : [.. batch.Uses.Select(u => Use(u, batch.Record.Kept.TimeZone(), measures))]
        );
        if (batch.Taught is { } taught)
        {
            yield return (
                Words.Of("batches.taught"),
                [.. taught.Rows.Select(r => r.Text), .. taught.Learned]
            );
        }
    }

    /// <summary>Whether the diary is as it was written, with the hash that covers it.</summary>
    /// <param name="batch">The batch.</param>
    public static string Chain(BatchRecord batch)
    {
        ArgumentNullException.ThrowIfNull(batch);
        var check = batch.Check;
        return check.IsWhole
            ? Words.Of("diary.check_whole", null, check.Entries, check.Head)
            : Words.Of("diary.check_broken", null, check.FirstWrong!.Value, check.Head);
    }

    /// <summary>A material with its amount.</summary>
    /// <param name="part">The material.</param>
    /// <param name="measures">The units and number format.</param>
    public static string Part(BatchPart part, Measures measures) =>
        Words.Of(
            "batches.part",
            null,
            part.Ingredient.Amount.Typical.ToString("0.##", measures.Culture),
            UnitWords.Name(part.Ingredient.Amount.Typical, part.Ingredient.Unit.Unit),
            part.Ingredient.Name,
            measures.Litres(part.LooseLitres),
            measures.Kilograms(part.Kilograms)
        ) + (part.Load is { } load ? EntryText.Origin(load.Giver, load.Since) : "");

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

    // What follows the batch from what went in: weeds, germs, residues, and whom it concerns.
    private static IEnumerable<string> Flags(BatchRecord batch) =>
        batch
            .Cautions()
            .OfType<JsonObject>()
            .Select(c =>
                c["materials"]!.AsArray() is { Count: > 0 } of
                    ? Words.Of(
                        "batches.flag",
                        null,
                        string.Join(", ", of.Select(m => m!.GetValue<string>())),
                        c["text"]!.GetValue<string>()
                    )
                    : c["text"]!.GetValue<string>()
            );

    /// <summary>How far it has come and what it is ready for, in a few lines.</summary>
    /// <param name="finish">The answer of <c>finish</c>.</param>
    public static IEnumerable<string> Finish(Answer finish)
    {
        ArgumentNullException.ThrowIfNull(finish);
        return finish.Text.Split('\n').TakeWhile(l => l.Length > 0 && !l.StartsWith(' ')).Take(2);
    }

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
