namespace Heapwright.Validation.Properties;

/// <summary>
/// A variable known by its 5th, 50th and 95th percentile, as docs/models/mixtures.md defines it: normal in two pieces on
/// the logarithm (amounts) or the logit (shares in percent). Drawn here by plain random numbers.
/// </summary>
internal static class TwoPieces
{
    private const double Z95 = 1.6448536269514722;

    public static double Positive(Random random, double low, double typical, double high) =>
        Math.Exp(Draw(random, Math.Log(low), Math.Log(typical), Math.Log(high)));

    public static double Percent(Random random, double low, double typical, double high) =>
        100 / (1 + Math.Exp(-Draw(random, Logit(low), Logit(typical), Logit(high))));

    private static double Logit(double percent) => Math.Log(percent / (100 - percent));

    private static double Draw(Random random, double low, double typical, double high)
    {
        // Box and Muller.
        var z =
            Math.Sqrt(-2 * Math.Log(1 - random.NextDouble()))
            * Math.Cos(2 * Math.PI * random.NextDouble());
        return typical + (z / Z95 * (z < 0 ? typical - low : high - typical));
    }
}
