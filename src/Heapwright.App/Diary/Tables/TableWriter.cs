using System.Globalization;
using nietras.SeparatedValues;

namespace Heapwright.App.Diary.Tables;

/// <summary>
/// Writes a table (CSV). What people typed may begin like a formula; such a cell gets an apostrophe before it, so that a
/// spreadsheet shows it and runs nothing. Numbers stay numbers.
/// </summary>
internal sealed class TableWriter : IDisposable
{
    private readonly SepWriter writer = Sep.New(',').Writer(o => o with { Escape = true }).ToText();

    /// <summary>Starts a row.</summary>
    public SepWriter.Row Row() => writer.NewRow();

    /// <summary>Puts words into a cell.</summary>
    public static void Words(SepWriter.Row row, string column, string text) =>
        row[column].Set(Harmless(text));

    /// <summary>Puts a number into a cell; empty where there is none.</summary>
    public static void Number(SepWriter.Row row, string column, double? value) =>
        row[column].Set(value?.ToString("0.######", CultureInfo.InvariantCulture) ?? "");

    /// <summary>A text that no spreadsheet takes for a formula.</summary>
    public static string Harmless(string text) =>
        text is ['=' or '+' or '-' or '@' or '\t' or '\r' or '\n', ..] ? "'" + text : text;

    /// <summary>The whole table.</summary>
    public override string ToString() => writer.ToString();

    /// <inheritdoc/>
    public void Dispose() => writer.Dispose();
}
