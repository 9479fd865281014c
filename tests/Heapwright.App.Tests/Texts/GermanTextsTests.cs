using System.Collections;
using System.Globalization;
using System.Resources;
using System.Text.RegularExpressions;
using Heapwright.App.Texts;

namespace Heapwright.App.Tests.Texts;

/// <summary>The German sentences stand beside the English ones: the same codes, the same places for values, the same numbers.</summary>
public class GermanTextsTests
{
    // The command line speaks English only.
    private const string EnglishOnly = "Heapwright.App.Texts.Cli";

    /// <summary>The sentence files, by the name of their resource.</summary>
    public static TheoryData<string> Files() =>
        [
            .. typeof(Words)
                .Assembly.GetManifestResourceNames()
                .Where(n =>
                    n.StartsWith("Heapwright.App.Texts.", StringComparison.Ordinal)
                    && n.EndsWith(".resources", StringComparison.Ordinal)
                )
                .Select(n => n[..^".resources".Length])
                .Where(n => n != EnglishOnly),
        ];

    [Fact]
    public void Files_OfTheProgram_AreAllLookedAt() =>
        Assert.True(Files().Count >= 21, $"{Files().Count} files");

    [Theory]
    [MemberData(nameof(Files))]
    public void German_EveryCode_HasItsSentence(string file) =>
        Assert.Equal(
            Sentences(file, "").Keys.Order(StringComparer.Ordinal),
            Sentences(file, "de").Keys.Order(StringComparer.Ordinal)
        );

    [Theory]
    [MemberData(nameof(Files))]
    public void German_EverySentence_HasTheSamePlaces(string file) =>
        Assert.Equal(Each(file, "", Places), Each(file, "de", Places));

    /// <summary>A limit or a number of days lost in translation would do harm.</summary>
    /// <param name="file">The file.</param>
    [Theory]
    [MemberData(nameof(Files))]
    public void German_EverySentence_HasTheSameNumbers(string file) =>
        Assert.Equal(Each(file, "", Numbers), Each(file, "de", Numbers));

    [Theory]
    [MemberData(nameof(Files))]
    public void German_EverySentence_SaysSomethingWhereEnglishDoes(string file)
    {
        var german = Sentences(file, "de");
        Assert.All(
            Sentences(file, ""),
            s =>
                Assert.Equal(
                    string.IsNullOrWhiteSpace(s.Value),
                    string.IsNullOrWhiteSpace(german[s.Key])
                )
        );
    }

    private static SortedDictionary<string, string> Each(
        string file,
        string language,
        Func<string, string> of
    ) =>
        new(
            Sentences(file, language)
                .ToDictionary(s => s.Key, s => of(s.Value), StringComparer.Ordinal),
            StringComparer.Ordinal
        );

    private static Dictionary<string, string> Sentences(string file, string language)
    {
        var all = new ResourceManager(file, typeof(Words).Assembly).GetResourceSet(
            CultureInfo.GetCultureInfo(language),
            createIfNotExists: true,
            tryParents: false
        );
        return all is null
            ? []
            : all.Cast<DictionaryEntry>()
                .ToDictionary(e => (string)e.Key, e => (string)e.Value!, StringComparer.Ordinal);
    }

    private static string Places(string sentence) =>
        Found(sentence, @"\{[0-9]+[^}]*\}", distinct: true);

    // A point and a comma change sides between the languages, so they are left out of the numbers.
    private static string Numbers(string sentence) =>
        Found(
            Regex.Replace(sentence, @"\{[^}]*\}", "", RegexOptions.None, TimeSpan.FromSeconds(5)),
            "[0-9]+([.,][0-9]+)*",
            distinct: false
        );

    private static string Found(string sentence, string pattern, bool distinct)
    {
        var found = Regex
            .Matches(sentence, pattern, RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5))
            .Select(m =>
                distinct
                    ? m.Value
                    : m
                        .Value.Replace(".", "", StringComparison.Ordinal)
                        .Replace(",", "", StringComparison.Ordinal)
            );
        return string.Join(
            ' ',
            (distinct ? found.Distinct(StringComparer.Ordinal) : found).Order(
                StringComparer.Ordinal
            )
        );
    }
}
