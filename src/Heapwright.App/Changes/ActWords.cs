using System.Globalization;
using Heapwright.App.Contract;
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

    private static string Of(string what, ReadOnlySpan<string> values, CultureInfo? culture) =>
        what == "acts.undone"
            ? Words.Of(what, culture, Of(values[0], values[1..], culture))
            : Words.TryOf(what, culture, [.. Put(what, values, culture)]) ?? what;

    // What is kept is the same whoever did it: numbers with a point and the ids of units. Said, they are the reader's.
    private static string[] Put(string what, ReadOnlySpan<string> values, CultureInfo? culture)
    {
        string[] said = [.. values];
        var (unit, counts) = what switch
        {
            "acts.stock_added" => (1, new[] { 0 }),
            "acts.stock_counted" => (3, [1, 2]),
            _ => (-1, []),
        };
        if (unit >= 0 && unit < said.Length)
        {
            said[unit] = UnitWords.Name(1, said[unit]);
            foreach (var at in counts)
            {
                if (double.TryParse(said[at], CultureInfo.InvariantCulture, out var count))
                {
                    said[at] = Figures.One(count, culture);
                }
            }
        }

        return said;
    }
}
