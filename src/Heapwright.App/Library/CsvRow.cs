using System.Collections.Immutable;
using System.Globalization;

namespace Heapwright.App.Library;

/// <summary>A row of a data file.</summary>
/// <param name="table">The table.</param>
/// <param name="row">Which row of it, from 0.</param>
internal sealed class CsvRow(CsvTable table, int row)
{
    /// <summary>The cell of a column; empty where nothing stands in it.</summary>
    /// <param name="column">The column.</param>
    public string this[string column] => table.Cell(row, column);

    /// <summary>The words of a cell, which stand between semicolons.</summary>
    /// <param name="column">The column.</param>
    public ImmutableArray<string> List(string column) =>
        [.. this[column].Split(';', StringSplitOptions.RemoveEmptyEntries)];

    /// <summary>The number in a cell; null where nothing stands in it.</summary>
    /// <param name="column">The column.</param>
    public double? Number(string column) =>
        this[column] is { Length: > 0 } cell
            ? double.Parse(cell, NumberStyles.Float, CultureInfo.InvariantCulture)
            : null;
}
