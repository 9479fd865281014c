using System.Globalization;
using Heapwright.App.Library;
using Heapwright.App.Texts;

namespace Heapwright.App.Changes;

/// <summary>Acts in words.</summary>
public static class ActWords
{
    /// <summary>What was done, in a sentence.</summary>
    /// <param name="act">The act.</param>
    /// <param name="culture">The language.</param>
    public static string Of(Act act, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(act);
        return Of(act.What, [.. act.Values], culture);
    }

    // What was taken back and taken back again is done again: it is said once, however often that went on.
    private static string Of(string what, string[] values, CultureInfo? culture)
    {
        var turn = "";
        while (what == "acts.undone")
        {
            turn = turn == "acts.undone" ? "acts.redone" : "acts.undone";
            (what, values) = (values[0], values[1..]);
        }

        var said = Words.TryOf(what, culture, Put(what, values, culture)) ?? what;
        return turn.Length == 0 ? said : Words.Of(turn, culture, said);
    }

    // What is kept is the same whoever did it: numbers with a point and the ids of units. Said, they are the reader's.
    private static string[] Put(string what, string[] values, CultureInfo? culture) =>
        (what, values) switch
        {
            ("acts.stock_added", [var count, var unit, var name]) =>
            [
                Amount(count, unit, culture),
                name,
            ],
            ("acts.stock_counted", [var name, var before, var after, var unit]) =>
            [
                name,
                Amount(before, unit, culture),
                Amount(after, unit, culture),
            ],
            _ => values,
        };

    private static string Amount(string count, string unit, CultureInfo? culture) =>
        double.TryParse(count, CultureInfo.InvariantCulture, out var amount)
            ? UnitWords.Amount(amount, UnitWords.Named(unit), culture)
            : $"{count} {UnitWords.Name(1, unit)}";
}
