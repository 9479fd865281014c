using System.Globalization;
using Heapwright.App.BuildSheets;
using Heapwright.App.Contract;
using Heapwright.App.HeatRecords;
using Heapwright.App.Texts;
using Heapwright.Core.Hygiene;
using PdfSharp.Drawing;

namespace Heapwright.App.Paper;

/// <summary>A record of heat as PDF: verdicts with their sources, gaps, every entry in order with its hash, room to sign.</summary>
internal sealed class HeatRecordPdf
{
    private const double TextFont = 8.8;
    private const double RowFont = 8.2;
    private const double RowHeight = 12.5;
    private const int HashDigits = 16;

    private readonly HygieneTold told;
    private readonly HygieneWords words;
    private readonly Measures measures;
    private readonly PaperPages pages;

    private HeatRecordPdf(
        HygieneTold told,
        HygieneWords words,
        Measures measures,
        PaperPages pages
    ) => (this.told, this.words, this.measures, this.pages) = (told, words, measures, pages);

    private HeatRecord Record => told.Question.Record;

    /// <summary>Prints a record.</summary>
    /// <param name="told">What is told of it.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="madeAt">The time it was made.</param>
    /// <param name="words">Its sentences.</param>
    /// <param name="measures">The reader's units.</param>
    public static byte[] Render(
        HygieneTold told,
        PaperSize paper,
        DateTimeOffset madeAt,
        HygieneWords words,
        Measures measures
    )
    {
        using var blank = new PaperPages(words.Say("title"), paper, madeAt);
        return new HeatRecordPdf(told, words, measures, blank).Print(madeAt);
    }

    private byte[] Print(DateTimeOffset madeAt)
    {
        pages.Text(words.Say("title"), PaperPages.Bold(22), pages.Left, pages.Y + 20);
        pages.Text(
            words.Say(
                "printed_on",
                madeAt.ToString("yyyy-MM-dd HH:mm zzz", CultureInfo.InvariantCulture)
            ),
            PaperPages.Plain(9),
            pages.Right,
            pages.Y + 8,
            XStringFormats.BaseLineRight
        );
        pages.Y += 34;
        foreach (var line in HygieneText.Facts(told, words, measures))
        {
            pages.Paragraph(line, PaperPages.Plain(10), 0);
        }

        Signature();
        pages.Heading(words.Say("heading_verdicts"));
        foreach (var finding in told.Findings.OrderBy(f => f.Verdict == RuleVerdict.NotApplicable))
        {
            Finding(finding);
        }

        pages.Heading(words.Say("heading_gaps"));
        foreach (var gap in HygieneText.Gaps(Record, words))
        {
            pages.Paragraph(gap, PaperPages.Plain(TextFont), 0);
        }

        Log();
        pages.Heading(words.Say("hash_heading"));
        pages.Paragraph(
            words.Say("hash", Record.Entries.Length, Record.Hash),
            PaperPages.Bold(TextFont),
            0
        );
        pages.Paragraph(words.Say("hash_note"), PaperPages.Plain(TextFont), 0);
        pages.Y += 8;
        PaperColumns.Print(pages, [8.4, 8], [.. Blocks()]);
        return pages.Finish((page, all) => words.Say("page", page, all));
    }

    // Blank lines for what only a person can say.
    private void Signature()
    {
        pages.Y += 10;
        foreach (var what in new[] { "batch", "instrument", "name", "place", "signature" })
        {
            pages.Need(26);
            var font = PaperPages.Plain(TextFont);
            var text = words.Say("sign_" + what);
            pages.Text(text, font, pages.Left, pages.Y + 16);
            var from = pages.Left + 190;
            pages.Page.DrawLine(
                new XPen(XColors.Black, 0.6),
                from,
                pages.Y + 18,
                pages.Right,
                pages.Y + 18
            );
            pages.Y += 24;
        }

        pages.Y += 6;
    }

    private void Finding(RuleFinding finding)
    {
        pages.Need(44);
        var bold = PaperPages.Bold(TextFont + 0.4);
        var verdict = words.Verdict(finding.Verdict);
        var width = pages.Page.MeasureString(verdict + "  ", bold).Width;
        pages.Text(verdict, bold, pages.Left, pages.Y + 10);
        pages.Paragraph(HygieneWords.Title(finding.Rule), bold, Math.Max(90, width));
        foreach (var line in HygieneText.Lines(finding, told.Question.Process, words))
        {
            pages.Paragraph(line, PaperPages.Plain(TextFont - 0.4), 90);
        }

        pages.Y += 5;
    }

    private void Log()
    {
        pages.Heading(words.Say("heading_record"));
        Head();
        foreach (var chained in Record.Entries)
        {
            if (pages.Need(RowHeight))
            {
                Head();
            }

            var entry = chained.Entry;
            Row(
                PaperPages.Plain(RowFont),
                chained.Number.ToString(CultureInfo.InvariantCulture),
                entry.Time.Text,
                entry.IsTurn ? words.Say("entry_turn") : entry.Written,
                entry.Probe ?? "",
                chained.Hash[..HashDigits]
            );
        }

        pages.Y += 6;
    }

    private void Head()
    {
        Row(
            PaperPages.Bold(RowFont),
            words.Say("column_number"),
            words.Say(
                Record.Entries[0].Entry.Time.Form == EntryTimeForm.Day
                    ? "column_day"
                    : "column_time"
            ),
            words.Say("column_entry"),
            words.Say("column_probe"),
            words.Say("column_hash")
        );
        pages.Page.DrawLine(
            new XPen(XColors.Black, 0.8),
            pages.Left,
            pages.Y,
            pages.Right,
            pages.Y
        );
        pages.Y += 2;
    }

    private void Row(
        XFont font,
        string number,
        string time,
        string entry,
        string probe,
        string hash
    )
    {
        var y = pages.Y + RowFont + 1;
        pages.Text(number, font, pages.Left + 30, y, XStringFormats.BaseLineRight);
        pages.Text(time, font, pages.Left + 40, y);
        pages.Text(entry, font, pages.Left + 190, y);
        var room = pages.Right - 100 - (pages.Left + 270);
        pages.Text(
            pages.Lines(probe, font, room) is [var first, ..] ? first : "",
            font,
            pages.Left + 270,
            y
        );
        pages.Text(hash, font, pages.Right, y, XStringFormats.BaseLineRight);
        pages.Y += RowHeight;
    }

    private IEnumerable<PaperBlock> Blocks()
    {
        yield return new PaperBlock(
            Words.Of("buildplans.heading_assumptions"),
            [.. told.Assumptions.All]
        );
        yield return new PaperBlock(
            words.Say("heading_studies"),
            [.. told.Studies.Select(words.Study)]
        );
        yield return new PaperBlock(
            Words.Of("buildplans.heading_cautions"),
            [
                .. told.Cautions.Select(c =>
                    c!["text"]!.GetValue<string>() + " " + c["why"]!.GetValue<string>()
                ),
            ]
        );
    }
}
