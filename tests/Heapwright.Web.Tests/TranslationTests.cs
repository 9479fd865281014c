using System.Text.RegularExpressions;
using System.Xml.Linq;
using Heapwright.App.Library;

namespace Heapwright.Web.Tests;

/// <summary>Every sentence of the pages stands in both languages, with a place for each of its values.</summary>
public sealed class TranslationTests
{
    private static readonly string Source = Path.Combine(ContrastTests.Root(), "src");

    public static TheoryData<string> Files =>
        [
            .. Directory
                .EnumerateFiles(Source, "*.resx", SearchOption.AllDirectories)
                .Select(f => Path.GetRelativePath(Source, f))
                .Where(f => !f.EndsWith(".de.resx", StringComparison.Ordinal))
                .Where(f =>
                    File.Exists(Path.Combine(Source, German(f)))
                    || f.StartsWith("Heapwright.Web/", StringComparison.Ordinal)
                )
                .Order(StringComparer.Ordinal),
        ];

    [Theory]
    [MemberData(nameof(Files))]
    public void File_InGerman_HasTheSameCodesWithTheSamePlaces(string file)
    {
        var english = Read(file);
        var german = Read(German(file));

        Assert.Equal(english.Keys.Order(), german.Keys.Order());
        Assert.Equal(
            [],
            english
                .Where(e => Places(e.Value) != Places(german[e.Key]))
                .Select(e => $"{e.Key}: {Places(e.Value)} and {Places(german[e.Key])}")
        );
        Assert.Equal([], german.Where(g => english[g.Key].Length > 0 && g.Value.Length == 0));
    }

    [Fact]
    public void Containers_OfTheDataFile_HaveTheirNamesInBothLanguages()
    {
        var english = Read("Heapwright.App/Texts/Containers.resx");

        Assert.Equal(
            UsualContainers
                .Set.Names.SelectMany(n => new[] { n + "_one", n + "_many" })
                .Order(StringComparer.Ordinal),
            english.Keys.Order(StringComparer.Ordinal)
        );
        foreach (var name in UsualContainers.Set.Names)
        {
            Assert.Equal(
                UsualContainers.Name(name),
                (english[name + "_one"], english[name + "_many"])
            );
        }
    }

    private static string German(string file) =>
        file.Replace(".resx", ".de.resx", StringComparison.Ordinal);

    private static Dictionary<string, string> Read(string file) =>
        XDocument
            .Load(Path.Combine(Source, file))
            .Root!.Elements("data")
            .ToDictionary(
                d => d.Attribute("name")!.Value,
                d => d.Element("value")!.Value,
                StringComparer.Ordinal
            );

    private static string Places(string sentence) =>
        string.Join(
            ' ',
            Regex
                .Matches(
                    sentence,
                    @"\{(?<n>\d+)[^}]*\}",
                    RegexOptions.ExplicitCapture,
                    TimeSpan.FromSeconds(1)
                )
                .Select(m => m.Groups["n"].Value)
                .Distinct(StringComparer.Ordinal)
                .Order(StringComparer.Ordinal)
        );
}
