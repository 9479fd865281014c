using Heapwright.Core.Quantities;
using Heapwright.Numerics.Sampling;

namespace Heapwright.Core.FinishedCompost;

/// <summary>The sample set of one question on finished compost: every unknown is drawn by its name.</summary>
/// <param name="seed">The seed.</param>
public sealed class SamplePoints(ulong seed)
{
    /// <summary>How many points are drawn.</summary>
    public const int Count = 1024;

    private readonly QuasiRandomSet set = new(Count, seed);

    /// <summary>Coordinates strictly between 0 and 1.</summary>
    /// <param name="name">The name of the unknown.</param>
    /// <returns>Shape [point].</returns>
    public double[] Uniform(string name)
    {
        var points = new double[Count];
        set.Block(name).Fill(0, points);
        return points;
    }

    /// <summary>A value at every point.</summary>
    /// <param name="name">The name of the unknown; the same name always gives the same draw.</param>
    /// <param name="value">What is known of it.</param>
    /// <param name="scale">The scale on which it is normal in two pieces.</param>
    /// <returns>Shape [point].</returns>
    public double[] Draw(string name, Spread value, SpreadScale scale) =>
        value.Sample(Uniform(name), scale);
}
