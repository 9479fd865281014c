using Heapwright.Core.Quantities;

namespace Heapwright.Core.Simulation;

/// <summary>The usual value and the prior of every parameter of the simulation.</summary>
public sealed class HeapParameters
{
    private readonly Spread[] priors;

    /// <summary>Makes a table.</summary>
    /// <param name="priors">Shape [parameter]: 5th, 50th and 95th percentile; the middle is the usual value.</param>
    public HeapParameters(IReadOnlyList<Spread> priors)
    {
        ArgumentNullException.ThrowIfNull(priors);
        if (priors.Count != Count)
        {
            throw new ArgumentException("a prior is needed for each parameter", nameof(priors));
        }

        this.priors = [.. priors];
    }

    /// <summary>The number of parameters.</summary>
    public static int Count { get; } = Enum.GetValues<HeapParameter>().Length;

    /// <summary>The usual value.</summary>
    /// <param name="parameter">The parameter.</param>
    public double Usual(HeapParameter parameter) => priors[(int)parameter].Typical;

    /// <summary>The prior.</summary>
    /// <param name="parameter">The parameter.</param>
    public Spread Prior(HeapParameter parameter) => priors[(int)parameter];

    /// <summary>The scale on which every prior is normal; a prior that touches 0 is cut there.</summary>
    public static SpreadScale Scale => SpreadScale.Positive;

    /// <summary>The table with other usual values; their priors are moved along in proportion.</summary>
    /// <param name="changes">The parameters that change.</param>
    public HeapParameters With(params (HeapParameter Parameter, double Value)[] changes)
    {
        ArgumentNullException.ThrowIfNull(changes);
        var moved = (Spread[])priors.Clone();
        foreach (var (parameter, value) in changes)
        {
            var old = moved[(int)parameter];
            moved[(int)parameter] = old.IsExact
                ? Spread.Exact(value)
                : old.Times(value / old.Typical);
        }

        return new HeapParameters(moved);
    }
}
