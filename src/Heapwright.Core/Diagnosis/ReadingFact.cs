namespace Heapwright.Core.Diagnosis;

/// <summary>
/// A temperature that was read. Where the reading misleads it may be anything between the air and a hot core; else it
/// lies within its class of heat, with the error of a dial and of the place.
/// </summary>
public sealed class ReadingFact : SignFact
{
    private const double Wildest = 1.0 / 70; // per °C
    private const double HighestMisled = 60; // °C

    private readonly double[] byHeat;
    private readonly int firstHeat;
    private readonly int misleads;
    private readonly double wild;

    /// <summary>A reading.</summary>
    /// <param name="model">The model.</param>
    /// <param name="celsius">The temperature, °C.</param>
    /// <param name="spot">Where: <c>core</c>, <c>side</c>, <c>top</c> or <c>base</c>.</param>
    /// <param name="airCelsius">The air, °C, where it is known.</param>
    /// <param name="errorCelsius">The standard error of the temperature, °C.</param>
    public ReadingFact(
        SignModel model,
        double celsius,
        string spot,
        double? airCelsius,
        double errorCelsius
    )
        : base("readings", spot)
    {
        ArgumentNullException.ThrowIfNull(model);
        Celsius = celsius;
        // A core is warmer than its skin; by how much differs from heap to heap.
        var (below, wide) = spot switch
        {
            "side" => (12.0, 11.0),
            "top" => (12.0, 12.0),
            "base" => (12.0, 11.0),
            _ => (0.0, 0.0),
        };
        var error = Math.Sqrt((errorCelsius * errorCelsius) + (wide * wide));
        var cold = airCelsius is { } air ? Math.Clamp(air + 9, 12, 32) : 22;
        double[] edges = [cold - 24, cold, Math.Max(38, cold + 6), 50, 66, 76, 96];
        byHeat = new double[edges.Length - 1];
        for (var h = 0; h < byHeat.Length; h++)
        {
            var (low, high) = (edges[h] - below, edges[h + 1] - below);
            byHeat[h] =
                (Below((celsius - low) / error) - Below((celsius - high) / error)) / (high - low);
            byHeat[h] = Math.Max(byHeat[h], 1e-6);
        }

        // A stem that is too short or a stuck dial reads too low far more often than too high.
        wild = celsius < HighestMisled ? Wildest : Wildest / 10;
        firstHeat = model.Given("heat:" + model.Field(SignModel.HeatField).Words[0]);
        misleads = model.Given("reading_misleads");
    }

    /// <summary>The temperature, °C.</summary>
    public double Celsius { get; }

    internal override bool DependsOn(int given) =>
        given == misleads || (given >= firstHeat && given < firstHeat + byHeat.Length);

    internal override double Likelihood(ReadOnlySpan<sbyte> holding)
    {
        var known = byHeat[holding[1] - firstHeat];
        foreach (var fault in holding[2..])
        {
            if (fault == misleads)
            {
                return (0.25 * known) + (0.75 * wild);
            }
        }

        return known;
    }

    // The normal distribution, by a logistic curve within 0.01.
    private static double Below(double z) => 1 / (1 + Math.Exp(-1.702 * z));
}
