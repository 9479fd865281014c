using System.Globalization;

namespace Heapwright.Validation.Properties;

/// <summary>A value of a question: its 5th, 50th and 95th percentile; exact where the three are equal.</summary>
internal readonly record struct Known(double Low, double Typical, double High)
{
    public bool IsExact => Low == Typical && Typical == High;

    public static Known Exact(double value) => new(value, value, value);

    public Known Times(double factor) => new(Low * factor, Typical * factor, High * factor);

    public string Json() =>
        IsExact
            ? Text(Typical)
            : $$"""{"low":{{Text(Low)}},"typical":{{Text(Typical)}},"high":{{Text(High)}}}""";

    public static string Text(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
