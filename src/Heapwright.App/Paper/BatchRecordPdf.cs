using System.Globalization;
using Heapwright.App.Batches;
using Heapwright.App.BuildSheets;
using Heapwright.App.Diary;
using Heapwright.App.Texts;
using NodaTime;

namespace Heapwright.App.Paper;

/// <summary>The record of a batch as PDF: what went in, what was done and read, heat, how far it came, where it went.</summary>
internal static class BatchRecordPdf
{
    private const double TextFont = 9;
    private const double Indent = 96;

    /// <summary>Prints a record.</summary>
    /// <param name="batch">The batch.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="madeAt">The time it was made.</param>
    public static byte[] Render(BatchRecord batch, PaperSize paper, DateTimeOffset madeAt)
    {
        var (kept, measures) = (batch.Record.Kept, batch.Measures);
        var zone = kept.TimeZone();
        var title = Words.Of("batches.head", null, kept.Name, DiaryAnswers.Day(kept.BuiltAt, zone));
        using var pages = new PaperPages(title, paper, madeAt);
        var plain = PaperPages.Plain(TextFont);
        pages.Paragraph(title, PaperPages.Bold(18));
        pages.Paragraph(
            Words.Of(
                "batches.printed_on",
                null,
                madeAt.ToString("yyyy-MM-dd HH:mm zzz", CultureInfo.InvariantCulture)
            ),
            PaperPages.Plain(8)
        );
        foreach (var (heading, lines) in BatchText.Sections(batch, batch.Finish()))
        {
            pages.Y += 8;
            pages.Heading(heading);
            foreach (var line in lines)
            {
                pages.Paragraph(line, plain, 0);
            }
        }

        pages.Y += 8;
        pages.Heading(Words.Of("batches.diary"));
        foreach (var entry in batch.Record.Diary.Standing.Select(s => s.Entry))
        {
            pages.Need(TextFont * 1.4);
            pages.Text(
                DiaryAnswers.Local(Instant.FromDateTimeOffset(entry.At), zone),
                plain,
                pages.Left,
                pages.Y + TextFont + 1
            );
            pages.Paragraph(EntryText.Of(entry, measures), plain, Indent);
        }

        pages.Y += 8;
        pages.Paragraph(BatchText.Chain(batch), PaperPages.Plain(8));
        return pages.Finish((page, all) => Words.Of("batches.page", null, page, all));
    }
}
