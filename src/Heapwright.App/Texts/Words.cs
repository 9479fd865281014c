using System.Globalization;
using Heapwright.Core.Reasons;
using NodaTime;

namespace Heapwright.App.Texts;

/// <summary>
/// The sentences a user reads, by code, in the language of <see cref="Languages"/>. The part of a code before the first dot names the resource file: the code
/// <c>mixtures.too_wet</c> stands in Texts/Mixtures.resx under <c>too_wet</c>.
/// </summary>
public static class Words
{
    private static readonly SentenceFiles Files = new(
        typeof(Words).Assembly,
        "Heapwright.App.Texts"
    );

    /// <summary>The sentence for a reason, its values put in place, quantities in metric units.</summary>
    /// <param name="reason">The reason.</param>
    /// <param name="culture">The number format; that of the language that is being read if null.</param>
    public static string Of(Reason reason, CultureInfo? culture = null)
    {
        ArgumentNullException.ThrowIfNull(reason);
        var measures = Measures.Metric;
        return (culture is null ? measures : measures with { Culture = culture }).Say(reason);
    }

    /// <summary>The sentence for a code, its values put in place.</summary>
    /// <param name="code">A code such as <c>mixtures.too_wet</c>.</param>
    /// <param name="culture">The number format; that of the language that is being read if null.</param>
    /// <param name="values">The values for the places {0}, {1}, ….</param>
    /// <exception cref="KeyNotFoundException">No sentence has this code.</exception>
    public static string Of(string code, CultureInfo? culture = null, params object[] values) =>
        TryOf(code, culture, values)
        ?? throw new KeyNotFoundException("no sentence for the code " + code);

    /// <summary>The sentence for one or for several; the rule is that of <see cref="Languages.End"/>.</summary>
    /// <param name="code">The code without its end.</param>
    /// <param name="count">How many.</param>
    /// <param name="culture">The number format; that of the language that is being read if null.</param>
    public static string Count(string code, int count, CultureInfo? culture = null) =>
        Of(code + Languages.End(count), culture, count);

    /// <summary>A day as the language that is being read has it, whatever the number format.</summary>
    /// <param name="day">The day.</param>
    public static string Day(LocalDate day) => day.ToString(Of("days.day"), Languages.Now);

    /// <summary>A day and a time of it as the language that is being read has them.</summary>
    /// <param name="moment">The day and the time.</param>
    public static string Moment(LocalDateTime moment) =>
        moment.ToString(Of("days.moment"), Languages.Now);

    /// <summary>The sentence for a code, or null where there is none.</summary>
    /// <param name="code">A code such as <c>mixtures.too_wet</c>.</param>
    /// <param name="culture">The number format; that of the language that is being read if null.</param>
    /// <param name="values">The values for the places {0}, {1}, ….</param>
    public static string? TryOf(string code, CultureInfo? culture = null, params object[] values) =>
        Files.TryOf(code, culture ?? Languages.Now, values);
}
