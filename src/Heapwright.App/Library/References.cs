using System.Collections.Frozen;
using System.Text.RegularExpressions;

namespace Heapwright.App.Library;

/// <summary>The publications of data/references.bib.</summary>
public static partial class References
{
    private static readonly Lazy<FrozenDictionary<string, (string Title, string Note)>> All = new(
        () =>
            Entry()
                .Matches(DataFiles.Text("references.bib"))
                .ToFrozenDictionary(
                    m => m.Groups["key"].Value,
                    m => (m.Groups["title"].Value, m.Groups["note"].Value),
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

    [GeneratedRegex(
        @"@\w+\{(?<key>[^,\s]+),\s*title = \{(?<title>[^}]*)\}(?:(?!\n@)[\s\S])*?(?:note = \{(?<note>[^}]*)\}|\n\})",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture
    )]
    private static partial Regex Entry();
}
