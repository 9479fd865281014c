using Heapwright.App.Changes;

namespace Heapwright.App.Sites;

/// <summary>The units in which quantities are shown and typed; everything is stored in SI.</summary>
/// <param name="Temperature"><c>c</c> or <c>f</c>.</param>
/// <param name="Volume"><c>l</c>, <c>gal_us</c> or <c>gal_uk</c>.</param>
/// <param name="Mass"><c>kg</c> or <c>lb</c>.</param>
/// <param name="Length"><c>m</c> or <c>ft</c>.</param>
public sealed record DisplayUnits(string Temperature, string Volume, string Mass, string Length)
{
    /// <summary>°C, litres, kilograms, metres.</summary>
    public static DisplayUnits Metric { get; } = new("c", "l", "kg", "m");

    /// <summary>°F, US gallons, pounds, feet.</summary>
    public static DisplayUnits American { get; } = new("f", "gal_us", "lb", "ft");

    /// <summary>°C, imperial gallons, pounds, feet.</summary>
    public static DisplayUnits British { get; } = new("c", "gal_uk", "lb", "ft");

    /// <summary>The units of temperature.</summary>
    public static IReadOnlyList<string> Temperatures { get; } = ["c", "f"];

    /// <summary>The units of volume.</summary>
    public static IReadOnlyList<string> Volumes { get; } = ["l", "gal_us", "gal_uk"];

    /// <summary>The units of mass.</summary>
    public static IReadOnlyList<string> Masses { get; } = ["kg", "lb"];

    /// <summary>The units of length.</summary>
    public static IReadOnlyList<string> Lengths { get; } = ["m", "ft"];

    /// <summary>What is wrong with it, field by field.</summary>
    public IEnumerable<Refusal> Faults() =>
        new[]
        {
            Check.Choice(Temperature, "temperature", Temperatures),
            Check.Choice(Volume, "volume", Volumes),
            Check.Choice(Mass, "mass", Masses),
            Check.Choice(Length, "length", Lengths),
        }.OfType<Refusal>();
}
