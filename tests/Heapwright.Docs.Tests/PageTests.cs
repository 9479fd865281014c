using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Heapwright.Docs.Tests;

/// <summary>The pages fit together and fit the repository.</summary>
public sealed partial class PageTests
{
    public static TheoryData<string> Pages => [.. Repository.Pages];

    [Theory]
    [MemberData(nameof(Pages))]
    public void Links_ToFiles_LeadSomewhere(string page)
    {
        var folder = Path.GetDirectoryName(Path.Combine(Repository.Root, page))!;

        Assert.All(
            Link()
                .Matches(Repository.Text(page))
                .Select(m => m.Groups["to"].Value.Split('#')[0])
                .Where(to => to.Length > 0 && !to.Contains("://", StringComparison.Ordinal)),
            to => Assert.True(Path.Exists(Path.Combine(folder, to)), to)
        );
    }

    [Fact]
    public void Decisions_AreAllInTheirIndex()
    {
        var index = Repository.Text("docs/decisions/README.md");

        Assert.All(
            Repository.Pages.Where(p => p.StartsWith("docs/decisions/0", StringComparison.Ordinal)),
            page => Assert.Contains($"({Path.GetFileName(page)})", index, StringComparison.Ordinal)
        );
    }

    [Fact]
    public void Packages_HaveEachTheirLineOfReason()
    {
        var reasons = Repository.Text("docs/decisions/0002-dependencies.md");
        var packages = XDocument
            .Parse(Repository.Text("Directory.Packages.props"))
            .Descendants()
            .Where(e => e.Name.LocalName is "PackageVersion" or "GlobalPackageReference")
            .Select(e => e.Attribute("Include")!.Value)
            .ToArray();

        Assert.NotEmpty(packages);
        Assert.Superset(packages.ToHashSet(), Named(reasons).ToHashSet());
    }

    // The first cell of every row; "Some.Package.Sqlite, .Design" names two of one family.
    private static IEnumerable<string> Named(string table)
    {
        foreach (Match row in Row().Matches(table))
        {
            var names = row.Groups["names"].Value.Split(", ");
            var family = names[0][..Math.Max(names[0].LastIndexOf('.'), 0)];
            yield return names[0];
            foreach (var name in names[1..])
            {
                yield return family + name;
            }
        }
    }

    [GeneratedRegex(
        @"(?m)^\| (?<names>\S+(, \.\S+)*) \|.+\|.+\|.+\|$",
        RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex Row();

    [GeneratedRegex(@"\[[^\]]*\]\((?<to>[^)\s]+)\)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Link();
}
