using System.Text;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
using Heapwright.App.Diary.Tables;
using Words = Heapwright.App.Texts.Words;

namespace Heapwright.Cli.Commands;

/// <summary>Brings a table of readings into a diary.</summary>
/// <param name="open">Opens what is stored in a folder.</param>
internal sealed class TableCommand(Func<string, DiaryDesk> open)
{
    private const int Beginning = 256 * 1024;
    private const int RowsShown = 5;
    private const long RowsBetweenWords = 100_000;
    private readonly Stored stored = new(open);

    /// <summary>Brings the table in, or shows how it would be read.</summary>
    /// <param name="call">The call.</param>
    public Reply Import(Call call)
    {
        var file = string.Join(' ', call.Words);
        var wishes = new TableWishes(
            call.Value("--unit") is null
                ? null
                : Stored.Word(call, "--unit", ["c", "f"], "c") == "f",
            call.Value("--dates") is null ? null
                : Stored.Word(call, "--dates", ["dmy", "mdy"], "dmy") == "dmy" ? DateOrder.DayFirst
                : DateOrder.MonthFirst
        );
        using var stream = OpenTable(file);
        using var text = new StreamReader(
            stream,
            Encoding.UTF8,
            detectEncodingFromByteOrderMarks: true,
            bufferSize: 64 * 1024
        );
        var beginning = FirstLines(stream);
        var form = TableFormGuess.Of(beginning, file, wishes);
        var desk = stored.Open(call);
        var heap = Stored.Heap(desk, call.Value("--heap")!);
        if (call.Preview)
        {
            return TableAnswers.Preview(
                form,
                desk.Tables.Preview(heap, form, beginning, RowsShown),
                heap,
                call.Measures
            );
        }

        long said = 0;
        var report = Stored.Await(
            desk.Tables.Run(
                heap,
                form,
                text,
                rows =>
                {
                    if (rows / RowsBetweenWords > said)
                    {
                        said = rows / RowsBetweenWords;
                        call.Tell(Words.Of("diary.import_progress", null, rows));
                    }
                },
                CancellationToken.None
            )
        );
        return DiaryAnswers.Imported(report, call.Measures);
    }

    private static FileStream OpenTable(string file)
    {
        try
        {
            if (Directory.Exists(file))
            {
                throw new InputProblem(file, "", Words.Of("cli.input_is_folder"));
            }

            return new FileStream(
                file,
                new FileStreamOptions
                {
                    Mode = FileMode.Open,
                    Access = FileAccess.Read,
                    Options = FileOptions.SequentialScan,
                }
            );
        }
        catch (Exception problem)
            when (problem is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new InputProblem(file, "", Words.Of("cli.input_not_there"));
        }
        catch (UnauthorizedAccessException)
        {
            throw new InputProblem(file, "", Words.Of("cli.input_not_allowed"));
        }
        catch (IOException)
        {
            throw new InputProblem(file, "", Words.Of("cli.input_not_readable"));
        }
    }

    // Whole lines only: half a row would be taken for a whole one.
    private static string FirstLines(FileStream stream)
    {
        var bytes = new byte[Beginning];
        var count = stream.ReadAtLeast(bytes, Beginning, throwOnEndOfStream: false);
        stream.Position = 0;
        using var reader = new StreamReader(
            new MemoryStream(bytes, 0, count),
            Encoding.UTF8,
            detectEncodingFromByteOrderMarks: true
        );
        var text = reader.ReadToEnd();
        var end = count < Beginning ? text.Length : text.LastIndexOf('\n') + 1;
        return text[..(end == 0 ? text.Length : end)];
    }
}
