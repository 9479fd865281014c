using System.Globalization;
using System.Text.RegularExpressions;
using Heapwright.App.Changes;

namespace Heapwright.Web.Showing;

/// <summary>Reads numbers as people type them, with a point or a comma, or with a fraction as the pages show it.</summary>
public static partial class NumberText
{
    private const string Parts = "¼½¾⅓⅔⅛⅜⅝⅞";

    private static readonly double[] PartValues =
    [
        0.25,
        0.5,
        0.75,
        1.0 / 3,
        2.0 / 3,
        0.125,
        0.375,
        0.625,
        0.875,
    ];

    /// <summary>Reads a number; what can be read in two ways is asked again, not guessed.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="field">The field it was typed into.</param>
    /// <param name="culture">How this person writes numbers.</param>
    /// <param name="value">The number; 0 where it was refused.</param>
    /// <returns>Why it was refused; null where it was read.</returns>
    public static Refusal? Read(string? text, string field, CultureInfo culture, out double value)
    {
        ArgumentNullException.ThrowIfNull(culture);
        value = 0;
        var typed = (text ?? "").Trim().Replace('\u2212', '-');
        if (typed.Length == 0)
        {
            return Refusal.Of(field, "sites.number_missing");
        }

        if (Fraction(typed) is { } fraction)
        {
            value = fraction;
            return null;
        }

        var plain = typed
            .Replace(" ", "", StringComparison.Ordinal)
            .Replace("\u00a0", "", StringComparison.Ordinal)
            .Replace("\u202f", "", StringComparison.Ordinal)
            .Replace("'", "", StringComparison.Ordinal);
        var points = plain.Count(c => c is '.');
        var commas = plain.Count(c => c is ',');
        if (points > 0 && commas > 0)
        {
            // With both in it, the last one is the decimal sign.
            var last = plain.LastIndexOfAny(['.', ',']);
            var grouping = plain[last] == '.' ? "," : ".";
            plain = plain.Replace(grouping, "", StringComparison.Ordinal);
        }
        else if (points + commas > 1)
        {
            plain = plain
                .Replace(".", "", StringComparison.Ordinal)
                .Replace(",", "", StringComparison.Ordinal);
        }
        else if (points + commas == 1 && IsTwoWays(plain, culture))
        {
            var sign = plain.IndexOfAny(['.', ',']);
            var whole = plain.Remove(sign, 1);
            var parts = string.Concat(
                plain.AsSpan(0, sign),
                culture.NumberFormat.NumberDecimalSeparator,
                plain.AsSpan(sign + 1).TrimEnd('0')
            );
            return Refusal.Of(field, "sites.number_two_ways", typed, whole, parts);
        }

        if (
            plain.Length > 20
            || !double.TryParse(
                plain.Replace(',', '.'),
                NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign,
                CultureInfo.InvariantCulture,
                out value
            )
            || !double.IsFinite(value)
        )
        {
            value = 0;
            var shown = typed.Length <= 30 ? typed : typed[..30] + "…";
            return Refusal.Of(
                field,
                "sites.number_unclear",
                shown,
                2.5.ToString(CultureInfo.CurrentCulture)
            );
        }

        return null;
    }

    // "½", "1½", "1 ½", "1/2", "1 1/2"; null for anything else.
    private static double? Fraction(string typed)
    {
        if (Fractions().Match(typed) is not { Success: true } match)
        {
            return null;
        }

        double Of(string group) =>
            match.Groups[group] is { Success: true } found
                ? double.Parse(found.Value, CultureInfo.InvariantCulture)
                : 0;
        var part = match.Groups["part"] is { Success: true } sign
            ? PartValues[Parts.IndexOf(sign.Value, StringComparison.Ordinal)]
            : Of("over") / Of("under");
        var size = Of("whole") + part;
        return typed[0] == '-' ? -size : size;
    }

    [GeneratedRegex(
        $@"^-?(?:(?:(?<whole>[0-9]{{1,6}})\s*)?(?<part>[{Parts}])|(?:(?<whole>[0-9]{{1,6}})\s+)?(?<over>[0-9]{{1,3}})[/⁄](?<under>[1-9][0-9]{{0,2}}))$",
        RegexOptions.CultureInvariant,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Fractions();

    // "1,500": the sign that separates thousands here, with three figures after it and one to three before, not "0".
    private static bool IsTwoWays(string plain, CultureInfo culture)
    {
        var sign = plain.IndexOfAny(['.', ',']);
        var before = plain.AsSpan(0, sign).TrimStart('-');
        return plain[sign].ToString() != culture.NumberFormat.NumberDecimalSeparator
            && plain.Length - sign == 4
            && before.Length is >= 1 and <= 3
            && before[0] != '0';
    }
}
