using System.Collections.Immutable;
using Heapwright.Core.Quantities;
using Heapwright.Core.Simulation;
using Heapwright.Numerics.Sampling;

namespace Heapwright.Core.Forecasts;

/// <summary>What the earlier heaps of a person in a bay say of the next one.</summary>
/// <remarks>
/// Heaps differ from each other though hands and bay stay: with z on the scale on which the prior is standard normal, a
/// heap has z = μ + e with the person's own μ of variance <c>1 − Between</c> and e of variance <c>Between</c>. What an
/// earlier fit found, taken apart from its prior, is a measurement of μ; the next prior has the mean of μ and the
/// variance of μ plus <c>Between</c>, so that it never gets narrower than <see cref="Floor"/> of the first one.
/// </remarks>
public sealed class HeapKnowledge
{
    // The share of the variance of a prior that lies between heaps of one person: an estimate of our own.
    private const double Between = 0.5;

    private readonly ImmutableDictionary<HeapParameter, ParameterScore> scores;

    private HeapKnowledge(ImmutableDictionary<HeapParameter, ParameterScore> scores) =>
        this.scores = scores;

    /// <summary>Nothing beyond the priors.</summary>
    public static HeapKnowledge None { get; } =
        new(ImmutableDictionary<HeapParameter, ParameterScore>.Empty);

    /// <summary>The least that the standard deviation of a prior can be narrowed to, as a share of what it was.</summary>
    public static double Floor { get; } = Math.Sqrt(Between);

    /// <summary>Whether there is anything.</summary>
    public bool IsEmpty => scores.IsEmpty;

    /// <summary>What is known of a parameter.</summary>
    /// <param name="parameter">The parameter.</param>
    public ParameterScore Of(HeapParameter parameter) =>
        scores.TryGetValue(parameter, out var score) ? score : new ParameterScore(0, 1);

    /// <summary>How far two heaps of one person go together: the correlation of their unknowns.</summary>
    public static double InStep { get; } = 1 - Between;

    /// <summary>A table of parameters with what is known put into its priors, for a simulation without readings.</summary>
    /// <param name="table">The plain table.</param>
    public HeapParameters In(HeapParameters table)
    {
        ArgumentNullException.ThrowIfNull(table);
        return new HeapParameters([
            .. Enum.GetValues<HeapParameter>().Select(p => Narrowed(table.Prior(p), Of(p))),
        ]);
    }

    private static Spread Narrowed(Spread prior, ParameterScore known)
    {
        if (prior.IsExact || known == new ParameterScore(0, 1))
        {
            return prior;
        }

        double At(double z) =>
            prior.AtScore(known.Mean + (z * known.Deviation), HeapParameters.Scale);
        return Spread.Of(At(-NormalDistribution.Z95), At(0), At(NormalDistribution.Z95));
    }

    /// <summary>What several earlier heaps taught together.</summary>
    /// <param name="heaps">What each fit found of the parameters, each from the plain prior; in any order.</param>
    public static HeapKnowledge From(
        IEnumerable<IReadOnlyDictionary<HeapParameter, ParameterScore>> heaps
    )
    {
        ArgumentNullException.ThrowIfNull(heaps);
        var precision = new double[HeapParameters.Count];
        var weighted = new double[HeapParameters.Count];
        var seen = new bool[HeapParameters.Count];
        foreach (var heap in heaps)
        {
            foreach (var (parameter, found) in heap)
            {
                // What the readings alone said: the fit with its prior of variance 1 taken away.
                var said = (1 / (found.Deviation * found.Deviation)) - 1;
                if (!(said > 1e-3) || !double.IsFinite(said))
                {
                    continue;
                }

                var value = found.Mean / (found.Deviation * found.Deviation) / said;
                var weight = 1 / ((1 / said) + Between);
                var p = (int)parameter;
                seen[p] = true;
                precision[p] += weight;
                weighted[p] += weight * value;
            }
        }

        var next = ImmutableDictionary.CreateBuilder<HeapParameter, ParameterScore>();
        for (var p = 0; p < seen.Length; p++)
        {
            if (seen[p])
            {
                var all = precision[p] + (1 / (1 - Between));
                next[(HeapParameter)p] = new ParameterScore(
                    weighted[p] / all,
                    Math.Sqrt((1 / all) + Between)
                );
            }
        }

        return new HeapKnowledge(next.ToImmutable());
    }
}
