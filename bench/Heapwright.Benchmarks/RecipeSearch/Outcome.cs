namespace Heapwright.Benchmarks.RecipeSearch;

/// <summary>How a solve ended.</summary>
/// <param name="Proven">Whether optimum or infeasibility was proven.</param>
/// <param name="Value">The best objective found; NaN if none was.</param>
/// <param name="Amounts">The amounts; empty if none were found.</param>
/// <param name="Milliseconds">Processor time of the solve.</param>
internal sealed record Outcome(bool Proven, double Value, double[] Amounts, double Milliseconds)
{
    /// <summary>In short, for the table.</summary>
    public override string ToString() =>
        string.Create(
            System.Globalization.CultureInfo.InvariantCulture,
            $"{(Proven ? "" : ">=")}{Milliseconds:F1} ms {(double.IsNaN(Value) ? Proven ? "infeasible" : "nothing" : Value.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture))}"
        );
}
