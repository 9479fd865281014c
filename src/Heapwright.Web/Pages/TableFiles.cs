using System.Text;
using Heapwright.App.Diary;
using Heapwright.App.Diary.Tables;
using Heapwright.App.Ports;
using Heapwright.App.Sites;
using Heapwright.Web.Showing;

namespace Heapwright.Web.Pages;

/// <summary>Tables (CSV) to take away. Their names are fixed: nothing that was typed gets into a name of a file.</summary>
internal static class TableFiles
{
    /// <summary>The diary of a heap.</summary>
    public static async Task<IResult> Diary(
        string key,
        DiaryDesk desk,
        Here here,
        CancellationToken cancel
    )
    {
        await here.Read(cancel);
        return
            Guid.TryParseExact(key, "N", out var id)
            && await desk.Reader.Of(id, null, cancel) is { } record
            ? Csv(DiaryTable.Of(record, here.Show.Measures), "diary.csv")
            : Results.NotFound();
    }

    /// <summary>What is at hand.</summary>
    public static async Task<IResult> Stock(IItemStore store, CancellationToken cancel) =>
        Csv(StockTable.Of(await store.All<StockEntry>(cancel)), "stock.csv");

    // The mark at the beginning tells spreadsheets that it is UTF-8.
    private static IResult Csv(string table, string name) =>
        Results.File(
            [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(table)],
            "text/csv; charset=utf-8",
            name
        );
}
