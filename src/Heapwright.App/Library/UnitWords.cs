using System.Globalization;
using System.Text;
using Heapwright.App.Texts;
using Heapwright.Core.Amounts;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Library;

/// <summary>Amounts as people say them: <c>1½ barrows</c>, <c>20 kg</c>.</summary>
public static class UnitWords
{
    private static readonly Dictionary<string, string> Signs = new(StringComparer.Ordinal)
    {
        ["l"] = "L",
        ["ml"] = "mL",
        ["ton_us"] = "US ton",
        ["gal_us"] = "US gal",
        ["gal_uk"] = "UK gal",
        ["ft3"] = "ft³",
        ["yd3"] = "yd³",
        ["m3"] = "m³",
    };

    /// <summary>An amount with its unit.</summary>
    /// <param name="amount">How many.</param>
    /// <param name="unit">The unit.</param>
    /// <param name="culture">The number format; that of the language that is being read if null.</param>
    public static string Amount(double amount, UnitSize unit, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(unit);
        return Number(amount, unit, culture) + " " + Name(amount, unit);
    }

    /// <summary>The name of a unit for an amount of it.</summary>
    /// <param name="amount">How many.</param>
    /// <param name="unit">The unit as in questions.</param>
    public static string Name(double amount, string unit) =>
        Name(amount, Named(unit)).TrimStart('×', ' ');

    /// <summary>A unit by its name, for saying it: a container of which only the name is known may be of any size.</summary>
    /// <param name="unit">The unit as in questions.</param>
    public static UnitSize Named(string unit) =>
        MeasureUnits.Find(unit) ?? UnitSize.OfVolume(unit, Spread.Exact(1), wholeByDefault: true);

    /// <summary>The number alone, in halves and quarters where it is one.</summary>
    /// <param name="amount">How many.</param>
    /// <param name="unit">The unit.</param>
    /// <param name="culture">The number format; that of the language that is being read if null.</param>
    public static string Number(double amount, UnitSize unit, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(unit);
        var whole = Math.Floor(amount);
        if (unit.WholeByDefault && Part(amount - whole) is { } part)
        {
            var text = new StringBuilder();
            if (whole > 0)
            {
                text.Append(culture ?? Languages.Now, $"{whole:0}");
            }

            return text.Append(part).ToString();
        }

        return amount.ToString(amount >= 100 ? "0.#" : "0.###", culture ?? Languages.Now);
    }

    /// <summary>The name of one container: that of a usual one, or the one its owner gave it.</summary>
    /// <param name="unit">The container.</param>
    public static string One(UnitSize unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        return Words.TryOf("containers." + unit.Unit + "_one") ?? unit.Unit.Replace('_', ' ');
    }

    /// <summary>The name of the unit for an amount of it.</summary>
    /// <param name="amount">How many.</param>
    /// <param name="unit">The unit.</param>
    public static string Name(double amount, UnitSize unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        if (!unit.WholeByDefault)
        {
            return Signs.GetValueOrDefault(unit.Unit, unit.Unit);
        }

        if (Words.TryOf("containers." + unit.Unit + Languages.End(amount)) is { } name)
        {
            return name;
        }

        if (UsualContainers.Name(unit.Unit) is { } words)
        {
            return Languages.IsOne(amount) ? words.One : words.Many;
        }

        return "× " + unit.Unit.Replace('_', ' ');
    }

    private static string? Part(double part) =>
        part switch
        {
            0.125 => "⅛",
            0.25 => "¼",
            0.375 => "⅜",
            0.5 => "½",
            0.625 => "⅝",
            0.75 => "¾",
            0.875 => "⅞",
            _ => null,
        };
}
