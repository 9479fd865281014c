using System.Globalization;
using Heapwright.App.Contract;
using Heapwright.App.Library;

namespace Heapwright.Cli.Arguments;

/// <summary>Reads what is said beside a record of heat.</summary>
internal static class HygieneArguments
{
    /// <summary>What was said so far, and one thing more.</summary>
    /// <param name="said">What was said so far.</param>
    /// <param name="name">The option.</param>
    /// <param name="value">Its value.</param>
    /// <exception cref="InputProblem">The value is not known.</exception>
    public static HygieneOptions With(HygieneOptions said, string name, string value) =>
        name switch
        {
            "--process" => said with
            {
                Process = Word(name, value, [.. HygieneRuleReader.ProcessWords]),
            },
            "--country" => said with
            {
                Country = Word(name, value, [.. HygieneRuleReader.Countries]),
            },
            "--rules" => said with { Rules = Rules(name, value) },
            _ => said with { SolidsPercent = Solids(value) },
        };

    private static string[] Rules(string name, string value)
    {
        string[] known = [.. HygieneRuleReader.Rules.Select(r => r.Id)];
        return [.. value.Split(',').Select(rule => Word(name, rule, known))];
    }

    private static string Word(string name, string value, string[] known) =>
        known.Contains(value, StringComparer.Ordinal)
            ? value
            : throw ArgumentReader.Wrong(
                "word_unknown",
                name,
                value,
                Nearest.Of(value, known),
                string.Join(", ", known)
            );

    private static double Solids(string value) =>
        double.TryParse(
            value,
            NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture,
            out var solids
        ) && solids is >= 0.1 and <= 100
            ? solids
            : throw ArgumentReader.Wrong("solids_wrong", value);
}
