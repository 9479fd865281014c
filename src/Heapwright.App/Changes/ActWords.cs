using System.Globalization;
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
            : Words.TryOf(what, culture, [.. values]) ?? what;
}
