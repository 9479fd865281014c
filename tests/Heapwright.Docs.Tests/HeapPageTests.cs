using System.Text.RegularExpressions;

namespace Heapwright.Docs.Tests;

/// <summary>The page on the heap model names every parameter and no other, with its usual value.</summary>
public sealed partial class HeapPageTests
{
    [Fact]
    public void HeapPage_NamesEveryParameterAndNoOther_WithItsValue()
    {
        var lines = Repository.Text("data/parameters.csv").Split('\n')[1..];
        var table = lines
            .Where(l => l.Length > 0)
            .Select(l => l.Split(','))
            .Select(c => (Name: c[0], Symbol: c[1], Unit: c[2], Usual: c[3]))
            .ToHashSet();
        var page = Row()
            .Matches(Repository.Text("docs/models/heap.md"))
            .Select(m =>
                (
                    Name: m.Groups["name"].Value,
                    Symbol: m.Groups["symbol"].Value,
                    Unit: m.Groups["unit"].Value,
                    Usual: m.Groups["usual"].Value
                )
            )
            .ToHashSet();

        Assert.NotEmpty(table);
        Assert.Equal(table, page);
    }

    [GeneratedRegex(
        @"^\| `(?<name>\w+)` \| (?<symbol>\S+) \| (?<usual>\S+) \| .*? \| (?<unit>[^|]+) \| [\w ]+ \|$",
        RegexOptions.Multiline | RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Row();
}
