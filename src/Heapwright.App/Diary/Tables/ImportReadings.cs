using System.Collections.Immutable;
using Heapwright.App.Sites;
using Heapwright.Core.Readings;
using Heapwright.Core.Reasons;
using nietras.SeparatedValues;

namespace Heapwright.App.Diary.Tables;

/// <summary>Brings a table of readings into a diary, row by row: however long it is, only some thousand rows are in memory.</summary>
/// <param name="entries">The way into the diary.</param>
public sealed class ImportReadings(RecordEntries entries)
{
    /// <summary>How many of the refused rows are told one by one.</summary>
    public const int MostRefusedTold = 1000;

    private const int AtOnce = 4000;

    /// <summary>The first rows of a table, as they would be read.</summary>
    /// <param name="heap">The heap.</param>
    /// <param name="form">How the table is written.</param>
    /// <param name="beginning">Its first lines; the last one whole.</param>
    /// <param name="most">How many rows.</param>
    public ImmutableArray<(long Line, ImmutableArray<DiaryEntry> Entries, Reason? Why)> Preview(
        KeptHeap heap,
        TableForm form,
        string beginning,
        int most
    )
    {
        var rows = Rows(heap, form);
        var shown = ImmutableArray.CreateBuilder<(long, ImmutableArray<DiaryEntry>, Reason?)>();
        using var table = Open(form, o => o.FromText(beginning));
        foreach (var row in table)
        {
            if (IsHeaderOrBlank(row, form))
            {
                continue;
            }

            if (shown.Count == most)
            {
                break;
            }

            var read = new List<DiaryEntry>();
            var why = rows.Read(row, read);
            shown.Add((row.LineNumberFrom, [.. read], why));
        }

        return shown.ToImmutable();
    }

    /// <summary>Brings a table in.</summary>
    /// <param name="heap">The heap.</param>
    /// <param name="form">How the table is written.</param>
    /// <param name="text">The table from its beginning.</param>
    /// <param name="progress">Is told the number of rows from time to time; may be null.</param>
    /// <param name="cancel">Gives up; what was kept until then stays kept.</param>
    public async Task<ImportReport> Run(
        KeptHeap heap,
        TableForm form,
        TextReader text,
        Action<long>? progress,
        CancellationToken cancel
    )
    {
        ArgumentNullException.ThrowIfNull(heap);
        var rows = Rows(heap, form);
        var batch = new Batch();
        var report = new ImportReport(0, 0, 0, 0, 0, []);
        using var table = Open(form, o => o.From(text));
        var more = true;
        while (more)
        {
            more = Fill(table, rows, form, batch);
            report = Add(report, batch, await Keep(heap.Id, batch, cancel));
            progress?.Invoke(report.Rows);
            batch.Clear();
        }

        return report;
    }

    private static bool Fill(SepReader table, TableRowReader rows, TableForm form, Batch batch)
    {
        while (batch.Entries.Count < AtOnce)
        {
            if (!table.MoveNext())
            {
                return false;
            }

            var row = table.Current;
            if (IsHeaderOrBlank(row, form))
            {
                continue;
            }

            batch.Rows++;
            if (rows.Read(row, batch.Entries) is { } why)
            {
                batch.Refuse(row.LineNumberFrom, why);
            }

            while (batch.Lines.Count < batch.Entries.Count)
            {
                batch.Lines.Add(row.LineNumberFrom);
            }
        }

        return true;
    }

    private async Task<(long Kept, long There, long Doubted)> Keep(
        Guid heapId,
        Batch batch,
        CancellationToken cancel
    )
    {
        long kept = 0;
        long there = 0;
        long doubted = 0;
        if (batch.Entries.Count == 0)
        {
            return (kept, there, doubted);
        }

        var outcomes = await entries.Record(heapId, batch.Entries, batch.Sitting, cancel);
        for (var i = 0; i < outcomes.Length; i++)
        {
            switch (outcomes[i].Status)
            {
                case AppendStatus.Kept:
                    kept++;
                    doubted += outcomes[i].Verdict is { Status: not PlausibilityStatus.Plausible }
                        ? 1
                        : 0;
                    break;
                case AppendStatus.AlreadyThere:
                    there++;
                    break;
                default:
                    batch.Refuse(batch.Lines[i], outcomes[i].Why!);
                    break;
            }
        }

        return (kept, there, doubted);
    }

    private static ImportReport Add(
        ImportReport report,
        Batch batch,
        (long Kept, long There, long Doubted) more
    ) =>
        new(
            report.Rows + batch.Rows,
            report.Kept + more.Kept,
            report.AlreadyThere + more.There,
            report.Doubted + more.Doubted,
            report.Refused + batch.RefusedCount,
            report.FirstRefused.Length >= MostRefusedTold
                ? report.FirstRefused
                : [.. report.FirstRefused.Concat(batch.Refused).Take(MostRefusedTold)]
        );

    private TableRowReader Rows(KeptHeap heap, TableForm form) =>
        new(
            form,
            new Arrival(heap.Id, EntryWay.Csv, entries.Clock.GetUtcNow(), heap.Zone),
            heap.TimeZone(),
            heap.BuiltAt.InZone(heap.TimeZone()).ToDateTimeOffset()
        );

    private static SepReader Open(TableForm form, Func<SepReaderOptions, SepReader> from) =>
        from(
            Sep.New(form.Separator)
                .Reader(o =>
                    o with
                    {
                        HasHeader = false,
                        Unescape = true,
                        DisableColCountCheck = true,
                    }
                )
        );

    private static bool IsHeaderOrBlank(SepReader.Row row, TableForm form)
    {
        if (row.RowIndex == 0 && form.HasHeader)
        {
            return true;
        }

        for (var i = 0; i < row.ColCount; i++)
        {
            if (!row[i].Span.IsWhiteSpace())
            {
                return false;
            }
        }

        return true;
    }

    private sealed class Batch
    {
        public List<DiaryEntry> Entries { get; } = new(AtOnce + 1);

        public List<long> Lines { get; } = new(AtOnce + 1);

        public List<RefusedRow> Refused { get; } = [];

        public long RefusedCount { get; private set; }

        public long Rows { get; set; }

        public RecordEntries.Sitting Sitting { get; } = new();

        public void Refuse(long line, Reason why)
        {
            RefusedCount++;
            if (Refused.Count < MostRefusedTold)
            {
                Refused.Add(new RefusedRow(line, why));
            }
        }

        public void Clear()
        {
            Entries.Clear();
            Lines.Clear();
            Refused.Clear();
            RefusedCount = 0;
            Rows = 0;
        }
    }
}
