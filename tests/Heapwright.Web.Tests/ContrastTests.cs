using System.Globalization;
using System.Text.RegularExpressions;

namespace Heapwright.Web.Tests;

/// <summary>
/// Text over colour, from the tokens of the stylesheet: at least 4.5 to 1 (WCAG 2.2, success criterion 1.4.3, printed).
/// Browser checks do not judge text within pictures, so the pairs used there are among these.
/// </summary>
public sealed class ContrastTests
{
    private static readonly TimeSpan Limit = TimeSpan.FromSeconds(5);

    public static TheoryData<string, string, string> Pairs
    {
        get
        {
            var pairs = new TheoryData<string, string, string>();
            foreach (var theme in new[] { "light", "dark", "sun" })
            {
                foreach (
                    var (text, ground) in new[]
                    {
                        ("ink", "paper"),
                        ("ink", "card"),
                        ("soft", "paper"),
                        ("soft", "card"),
                        ("soft", "wash"),
                        ("ink", "wash"),
                        ("ink", "alert"),
                        ("leaf", "paper"),
                        ("leaf", "card"),
                        ("leaf", "wash"),
                        ("rust", "paper"),
                        ("rust", "card"),
                        ("rust", "alert"),
                        ("on-leaf", "leaf"),
                        ("on-disc", "disc"),
                        ("ink", "fan"),
                        ("ink", "fan-pale"),
                    }
                )
                {
                    pairs.Add(theme, text, ground);
                }
            }

            return pairs;
        }
    }

    /// <summary>The drawing of a sheet is inked with tokens, so the ground under it must be one of them too.</summary>
    [Fact]
    public void Drawing_Ground_ChangesWithTheTheme() =>
        Assert.Matches(
            new Regex(
                @"\.drawing \{[^}]*background: var\(--card\)",
                RegexOptions.ExplicitCapture,
                Limit
            ),
            File.ReadAllText(Path.Combine(Root(), "src/Heapwright.Web/wwwroot/heap.css"))
        );

    /// <summary>Tokens stand outside of every layer and win over those within, unless these are important.</summary>
    [Fact]
    public void Tokens_OnPaper_AllTakeThePlaceOfTheThemes()
    {
        var css = File.ReadAllText(Path.Combine(Root(), "src/Heapwright.Web/wwwroot/heap.css"));
        var print = css[css.IndexOf("@media print", StringComparison.Ordinal)..];
        var tokens = Regex.Matches(
            print,
            "--(?<name>[a-z-]+): (?<value>#[0-9a-f]{3,6})(?<important> !important)?;",
            RegexOptions.ExplicitCapture,
            Limit
        );

        Assert.Contains(tokens, t => t.Groups["name"].Value == "ink");
        Assert.All(tokens, t => Assert.True(t.Groups["important"].Success, t.Value));
    }

    [Theory]
    [MemberData(nameof(Pairs))]
    public void Tokens_TextOverGround_CanBeRead(string theme, string text, string ground)
    {
        var tokens = Tokens(theme);

        var ratio = Ratio(tokens[text], tokens[ground]);

        Assert.True(ratio >= 4.5, $"{theme}: {text} over {ground} is {ratio:0.00} to 1");
    }

    // The colours of warmth are told apart by how dark they are alone: each at least a sixth darker than the one before
    // (a choice of our own; no source), so that grey, sun and few-colour sight lose nothing.
    [Fact]
    public void HeatScale_StepByStep_GetsDarker()
    {
        var colours = Drawings.HeatScale.Colours;

        Assert.Equal(Drawings.HeatScale.Levels.Count + 1, colours.Count);
        for (var i = 1; i < colours.Count; i++)
        {
            var step = (Luminance(colours[i - 1]) + 0.05) / (Luminance(colours[i]) + 0.05);
            Assert.True(step >= 1.16, $"{colours[i - 1]} to {colours[i]} is only {step:0.00}");
        }
    }

    // Lines of charts are graphics: at least 3 to 1 (WCAG 2.2, success criterion 1.4.11, printed).
    [Theory]
    [InlineData("light")]
    [InlineData("dark")]
    [InlineData("sun")]
    public void FanLines_OverTheirBands_CanBeSeen(string theme)
    {
        var tokens = Tokens(theme);

        foreach (
            var (line, ground) in new[]
            {
                ("fan-line", "fan"),
                ("fan-line", "fan-pale"),
                ("fan-line", "card"),
                ("fan-second-line", "fan-second"),
                ("fan-second-line", "card"),
            }
        )
        {
            var ratio = Ratio(tokens[line], tokens[ground]);
            Assert.True(ratio >= 3, $"{theme}: {line} over {ground} is {ratio:0.00} to 1");
        }
    }

    [Fact]
    public void Ratio_BlackOverWhite_Is21() =>
        Assert.InRange(Ratio("#000000", "#ffffff"), 20.99, 21.01);

    private static Dictionary<string, string> Tokens(string theme)
    {
        var css = File.ReadAllText(Path.Combine(Root(), "src/Heapwright.Web/wwwroot/heap.css"));
        var tokens = new Dictionary<string, string>(StringComparer.Ordinal);
        Take(css, @"^:root \{(?<body>.*?)^\}", tokens);
        if (theme != "light")
        {
            Take(css, @"^:root\[data-theme=" + theme + @"\] \{(?<body>.*?)^\}", tokens);
        }

        return tokens;
    }

    private static void Take(string css, string block, Dictionary<string, string> tokens)
    {
        var body = Regex
            .Match(
                css,
                block,
                RegexOptions.Multiline | RegexOptions.Singleline | RegexOptions.ExplicitCapture,
                Limit
            )
            .Groups["body"]
            .Value;
        Assert.NotEmpty(body);
        foreach (
            Match token in Regex.Matches(
                body,
                "--(?<name>[a-z-]+): (?<value>#[0-9a-f]{3,6});",
                RegexOptions.ExplicitCapture,
                Limit
            )
        )
        {
            tokens[token.Groups["name"].Value] = token.Groups["value"].Value;
        }
    }

    private static double Ratio(string a, string b)
    {
        var (x, y) = (Luminance(a), Luminance(b));
        return (Math.Max(x, y) + 0.05) / (Math.Min(x, y) + 0.05);
    }

    private static double Luminance(string colour)
    {
        var hex =
            colour.Length == 4
                ? string.Concat(colour.Skip(1).Select(c => new string(c, 2)))
                : colour[1..];
        double Channel(int at)
        {
            var value =
                int.Parse(hex.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture)
                / 255.0;
            return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
        }

        return (0.2126 * Channel(0)) + (0.7152 * Channel(2)) + (0.0722 * Channel(4));
    }

    internal static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder!.FullName, "Heapwright.slnx")))
        {
            folder = folder.Parent;
        }

        return folder.FullName;
    }
}
