using System.Collections.Frozen;
using System.Text.RegularExpressions;
using Heapwright.App.Library;

namespace Heapwright.Web.Showing;

/// <summary>The sources behind figures, by their key in data/references.bib.</summary>
public static partial class Sources
{
    private static readonly Lazy<FrozenDictionary<string, string>> Titles = new(Read);

    /// <summary>A source as people cite it: who, what, when; the key itself where it is not in the list.</summary>
    /// <param name="key">The key.</param>
    public static string Title(string key) => Titles.Value.GetValueOrDefault(key, key);

    private static FrozenDictionary<string, string> Read()
    {
        var all = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (Match entry in Entry().Matches(DataFiles.Text("references.bib")))
        {
            var body = entry.Groups["body"].Value;
            string Field(string name)
            {
                var found = Regex.Match(
                    body,
                    @"\b" + name + @"\s*=\s*[{""](?<value>(?:[^{}""]|\{[^{}]*\})*)[}""]",
                    RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture,
                    TimeSpan.FromSeconds(1)
                );
                return found
                    .Groups["value"]
                    .Value.Replace("{", "", StringComparison.Ordinal)
                    .Replace("}", "", StringComparison.Ordinal)
                    .Replace("--", "–", StringComparison.Ordinal)
                    .Trim();
            }

            var parts = new[] { Field("author"), Field("title"), Field("year") };
            all[entry.Groups["key"].Value] = string.Join(", ", parts.Where(p => p.Length > 0));
        }

        return all.ToFrozenDictionary(StringComparer.Ordinal);
    }

    [GeneratedRegex(
        @"^@\w+\s*\{\s*(?<key>[^,\s]+)\s*,(?<body>.*?)^\}",
        RegexOptions.Multiline | RegexOptions.Singleline | RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 2000
    )]
    private static partial Regex Entry();
}
