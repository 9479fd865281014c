namespace Heapwright.App.Library;

/// <summary>A row of a data file.</summary>
/// <param name="table">The table.</param>
/// <param name="row">Which row of it, from 0.</param>
internal sealed class CsvRow(CsvTable table, int row)
{
    /// <summary>The cell of a column; empty where nothing stands in it.</summary>
    /// <param name="column">The column.</param>
    public string this[string column] => table.Cell(row, column);
}
