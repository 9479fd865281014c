using Heapwright.App.Diary.Tables;
using NodaTime.Text;

namespace Heapwright.App.Sites;

/// <summary>What is at hand, as a table (CSV) with one row for each thing.</summary>
public static class StockTable
{
    /// <summary>The columns.</summary>
    public static IReadOnlyList<string> Columns { get; } =
    ["name", "material", "amount", "unit", "since", "giver", "note", "id"];

    /// <summary>The table; its header alone where nothing is at hand.</summary>
    /// <param name="stock">What is at hand.</param>
    public static string Of(IReadOnlyCollection<StockEntry> stock)
    {
        ArgumentNullException.ThrowIfNull(stock);
        if (stock.Count == 0)
        {
            return string.Join(',', Columns) + "\n";
        }

        using var table = new TableWriter();
        foreach (var entry in stock)
        {
            using var row = table.Row();
            TableWriter.Words(row, "name", entry.Name);
            TableWriter.Words(row, "material", entry.Material);
            TableWriter.Number(row, "amount", entry.Amount);
            TableWriter.Words(row, "unit", entry.Unit);
            row["since"].Set(LocalDatePattern.Iso.Format(entry.Since));
            TableWriter.Words(row, "giver", entry.Giver);
            TableWriter.Words(row, "note", entry.Note);
            row["id"].Set(entry.Id.ToString("D"));
        }

        return table.ToString();
    }
}
