namespace Heapwright.App.Library;

/// <summary>The publications of data/references.bib.</summary>
public static class References
{
    // Each entry as it is printed; few of them are ever asked for.
    private static readonly Lazy<Dictionary<string, string>> All = new(() =>
        DataFiles
            .Text("references.bib")
            .Split("\n@", StringSplitOptions.RemoveEmptyEntries)
            .ToDictionary(Key, StringComparer.Ordinal)
    );

    /// <summary>The title of a publication.</summary>
    /// <param name="key">Its key.</param>
    /// <exception cref="KeyNotFoundException">There is none.</exception>
    public static string Title(string key) => Value(All.Value[key], "title");

    /// <summary>Whether it is remembered, not seen in print.</summary>
    /// <param name="key">Its key.</param>
    public static bool IsFromMemory(string key) =>
        Value(All.Value[key], "note").StartsWith("from memory", StringComparison.Ordinal);

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
