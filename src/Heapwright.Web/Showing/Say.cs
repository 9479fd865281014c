using System.Globalization;
using Heapwright.App.Changes;
using Heapwright.App.Texts;

namespace Heapwright.Web.Showing;

/// <summary>
/// The texts of the pages in the reader's language, by code: <c>stock.title</c> stands in Texts/Stock.resx under
/// <c>title</c>.
/// </summary>
public static class Say
{
    private static readonly SentenceFiles Files = new(typeof(Say).Assembly, "Heapwright.Web.Texts");

    /// <summary>A text, its values put in place in the reader's number format.</summary>
    /// <param name="code">The code.</param>
    /// <param name="values">The values for the places {0}, {1}, ….</param>
    /// <exception cref="KeyNotFoundException">No text has this code.</exception>
    public static string Of(string code, params object[] values) =>
        TryOf(code, values) ?? throw new KeyNotFoundException("no text for the code " + code);

    /// <summary>A text, or null where there is none.</summary>
    /// <param name="code">The code.</param>
    /// <param name="values">The values for the places {0}, {1}, ….</param>
    public static string? TryOf(string code, params object[] values) =>
        Files.TryOf(code, CultureInfo.CurrentCulture, values);

    /// <summary>The text for one or for several; the rule is that of <see cref="Languages.End"/>.</summary>
    /// <param name="code">The code without its end.</param>
    /// <param name="count">How many.</param>
    public static string Count(string code, int count) => Of(code + Languages.End(count), count);

    /// <summary>A refusal in words.</summary>
    /// <param name="refusal">The refusal.</param>
    public static string Of(Refusal refusal)
    {
        ArgumentNullException.ThrowIfNull(refusal);
        return Words.Of(refusal.Why, CultureInfo.CurrentCulture);
    }
}
