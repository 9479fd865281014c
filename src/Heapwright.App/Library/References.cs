using System.Collections.Frozen;

namespace Heapwright.App.Library;

/// <summary>The publications of data/references.bib.</summary>
public static class References
{
    private static readonly Lazy<FrozenDictionary<string, (string Title, string Note)>> All = new(
        () =>
            DataFiles
                .Text("references.bib")
                .Split("\n@", StringSplitOptions.RemoveEmptyEntries)
                .ToFrozenDictionary(
                    Key,
                    entry => (Value(entry, "title"), Value(entry, "note")),
                    StringComparer.Ordinal
                )
    );

    /// <summary>The title of a publication.</summary>
    /// <param name="key">Its key.</param>
    /// <exception cref="KeyNotFoundException">There is none.</exception>
    public static string Title(string key) => All.Value[key].Title;

    /// <summary>Whether it is remembered, not seen in print.</summary>
    /// <param name="key">Its key.</param>
    public static bool IsFromMemory(string key) =>
        All.Value[key].Note.StartsWith("from memory", StringComparison.Ordinal);

    private static string Key(string entry)
    {
        var start = entry.IndexOf('{', StringComparison.Ordinal) + 1;
        return entry[start..entry.IndexOf(',', start)];
    }

    private static string Value(string entry, string field)
    {
        var start = entry.IndexOf(field + " = {", StringComparison.Ordinal);
        if (start < 0)
        {
            return "";
        }

        start += field.Length + " = {".Length;
        return entry[start..entry.IndexOf('}', start)];
    }
}
