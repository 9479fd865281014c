namespace Heapwright.Docs.Tests;

/// <summary>Words that stand in no file of the repository.</summary>
public sealed class WordTests
{
    // Put together from parts, or this file would be the first to be found.
    private static readonly string[] Unwanted =
    [
        "trans" + "cript",
        "seed " + "document",
        "nuget" + ".org",
        "npmjs" + ".org",
        "npmjs" + ".com",
        "pypi" + ".org",
        "crates" + ".io",
        "deb.debian" + ".org",
    ];

    private static readonly string[] NotText = [".ttf", ".png", ".ico", ".db", ".pdf"];

    [Fact]
    public void Files_HoldNoUnwantedWord()
    {
        var found =
            from file in Repository.Files
            where !NotText.Contains(Path.GetExtension(file), StringComparer.Ordinal)
            from word in In(Repository.Text(file))
            select $"{file}: {word}";

        Assert.Empty(found);
    }

    [Fact]
    public void UnwantedWord_InAnyCase_IsFound() =>
        Assert.Equal([Unwanted[0]], In("a Trans" + "cript of words"));

    private static IEnumerable<string> In(string text) =>
        Unwanted.Where(word => text.Contains(word, StringComparison.OrdinalIgnoreCase));
}
