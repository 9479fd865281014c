using System.Globalization;
using Heapwright.App.Contract;
using Heapwright.App.Texts;

namespace Heapwright.Cli.Arguments;

/// <summary>
/// Reads the arguments strictly: what is not understood is refused with the nearest word that is. Written by hand
/// because the grammar is small and start-up is most of what a short command costs.
/// </summary>
internal static class ArgumentReader
{
    /// <summary>The largest seed: whole numbers up to here pass through JSON unharmed.</summary>
    public const ulong LargestSeed = 9_007_199_254_740_991;

    /// <summary>The options that only the commands of the diary take; each has a value.</summary>
    private static readonly string[] OfTheDiary =
    [
        "--heap",
        "--temperature",
        "--spot",
        "--depth",
        "--air",
        "--with",
        "--at",
        "--id",
        "--how",
        "--role",
        "--part",
        "--amount",
        "--bed",
        "--test",
        "--values",
        "--kind",
        "--entry",
        "--name",
        "--built",
        "--zone",
        "--aim",
        "--sheet",
        "--unit",
        "--dates",
        "--against",
        "--without",
        "--by",
        "--out",
    ];

    private static readonly string[] Known =
    [
        .. OfTheDiary,
        "--preview",
        "--keep",
        "--forget",
        "--input",
        "--json",
        "--svg",
        "--pdf",
        "--paper",
        "--seed",
        "--process",
        "--country",
        "--rules",
        "--solids",
        "--units",
        "--help",
        "--version",
    ];

    private static readonly string[] Papers = ["a4", "letter"];

    /// <summary>Sorts the arguments into words and options.</summary>
    /// <param name="args">The arguments as typed.</param>
    /// <exception cref="InputProblem">An option is unknown, stands twice, or its value is missing or not allowed.</exception>
    public static ParsedArguments Read(IReadOnlyList<string> args)
    {
        var words = new List<string>();
        var given = new List<string>();
        var parsed = new ParsedArguments();
        var onlyWords = false;
        for (var i = 0; i < args.Count; i++)
        {
            var arg = args[i];
            // A lone dash is a word; after two dashes everything is.
            if (onlyWords || arg.Length < 2 || arg[0] != '-')
            {
                words.Add(arg);
                continue;
            }

            if (arg == "--")
            {
                onlyWords = true;
                continue;
            }

            var (name, value) = Split(arg);
            name = name == "-h" ? "--help" : name;
            if (!Known.Contains(name, StringComparer.Ordinal))
            {
                throw Wrong("unknown_option", name, Nearest.Of(name, Known), List(Known));
            }

            if (given.Contains(name, StringComparer.Ordinal))
            {
                throw Wrong("option_twice", name);
            }

            given.Add(name);
            if (
                name is "--json" or "--help" or "--version" or "--preview" or "--keep" or "--forget"
            )
            {
                if (value is not null)
                {
                    throw Wrong("option_takes_no_value", name, value);
                }

                parsed = name switch
                {
                    "--json" => parsed with { Json = true },
                    "--help" => parsed with { Help = true },
                    "--preview" => parsed with { Preview = true },
                    "--keep" => parsed with { Keep = true },
                    "--forget" => parsed with { Forget = true },
                    _ => parsed with { Version = true },
                };
                continue;
            }

            value ??= i + 1 < args.Count ? args[++i] : throw Wrong("option_needs_value", name);
            parsed = With(parsed, name, value);
        }

        return parsed with
        {
            Words = [.. words],
            Given = [.. given],
        };
    }

    /// <summary>A fault of the arguments, in one sentence.</summary>
    /// <param name="code">The sentence's code in Texts/Cli.resx.</param>
    /// <param name="values">What the sentence names.</param>
    public static InputProblem Wrong(string code, params object[] values) =>
        new("heapwright", "", Words.Of("cli." + code, null, values));

    private static (string Name, string? Value) Split(string arg)
    {
        var equals = arg.IndexOf('=', StringComparison.Ordinal);
        return equals < 0 ? (arg, null) : (arg[..equals], arg[(equals + 1)..]);
    }

    private static ParsedArguments With(ParsedArguments parsed, string name, string value)
    {
        // An empty name, or an option swallowed as a name, is nearly always a slip in a script.
        if (value.Length == 0 || value.StartsWith("--", StringComparison.Ordinal))
        {
            throw Wrong("option_needs_value", name);
        }

        return name switch
        {
            "--input" => parsed with { Input = value },
            "--svg" => parsed with { Svg = value },
            "--pdf" => parsed with { Pdf = value },
            "--paper" => parsed with { Paper = Paper(value) },
            "--units" => parsed with { Measures = Units(name, value) },
            "--process" or "--country" or "--rules" or "--solids" => parsed with
            {
                Hygiene = HygieneArguments.With(parsed.Hygiene, name, value),
            },
            "--seed" => parsed with { Seed = Seed(value) },
            _ => parsed with { Values = parsed.Values.SetItem(name, value) },
        };
    }

    private static string Paper(string value) =>
        Papers.Contains(value, StringComparer.Ordinal)
            ? value
            : throw Wrong("paper_unknown", value, List(Papers));

    /// <summary>The measures of a name.</summary>
    /// <param name="from">The option or variable it comes from.</param>
    /// <param name="value">The name.</param>
    /// <exception cref="InputProblem">There are none of this name.</exception>
    public static Measures Units(string from, string value) =>
        Measures.Find(value) ?? throw Wrong("units_unknown", from, value, List(Measures.Names));

    private static ulong Seed(string value) =>
        ulong.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out var seed)
        && seed <= LargestSeed
            ? seed
            : throw Wrong("seed_wrong", value, LargestSeed);

    private static string List(IEnumerable<string> words) => string.Join(", ", words);
}
