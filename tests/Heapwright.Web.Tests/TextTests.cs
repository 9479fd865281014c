using System.Text.RegularExpressions;
using Heapwright.App.Texts;
using Heapwright.Web.Showing;

namespace Heapwright.Web.Tests;

public sealed class TextTests
{
    [Fact]
    public void Codes_InThePages_AllHaveTheirText()
    {
        var root = Path.Combine(ContrastTests.Root(), "src/Heapwright.Web");
        var missing = new List<string>();
        var found = 0;
        foreach (
            var file in Directory
                .EnumerateFiles(root, "*.*", SearchOption.AllDirectories)
                .Where(f =>
                    f.EndsWith(".razor", StringComparison.Ordinal)
                    || f.EndsWith(".cs", StringComparison.Ordinal)
                )
                .Where(f =>
                    !f.Contains("/obj/", StringComparison.Ordinal)
                    && !f.Contains("/bin/", StringComparison.Ordinal)
                )
        )
        {
            foreach (
                Match match in Regex.Matches(
                    File.ReadAllText(file),
                    @"\b(?<who>Say|Words)\.(TryOf|Of)\(\s*""(?<code>[A-Za-z]+\.[A-Za-z0-9_]+)""\s*[,)]",
                    RegexOptions.ExplicitCapture,
                    TimeSpan.FromSeconds(5)
                )
            )
            {
                found++;
                var code = match.Groups["code"].Value;
                var text = match.Groups["who"].Value == "Say" ? Say.TryOf(code) : Words.TryOf(code);
                if (text is null)
                {
                    missing.Add($"{Path.GetFileName(file)}: {code}");
                }
            }
        }

        Assert.True(found > 150, $"only {found} codes were found");
        Assert.Equal([], missing);
    }
}
