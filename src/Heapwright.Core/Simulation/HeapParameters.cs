using Heapwright.Core.Quantities;

namespace Heapwright.Core.Simulation;

/// <summary>The usual value and the prior of every parameter of the simulation.</summary>
public sealed class HeapParameters
{
    private readonly double[] usual;
    private readonly Spread[] priors;
    private readonly SpreadScale[] scales;

    /// <summary>Makes a table.</summary>
    /// <param name="priors">Shape [parameter]: 5th, 50th and 95th percentile; the middle is the usual value.</param>
    /// <param name="scales">Shape [parameter]: the scale on which the prior is normal.</param>
    public HeapParameters(IReadOnlyList<Spread> priors, IReadOnlyList<SpreadScale> scales)
    {
        ArgumentNullException.ThrowIfNull(priors);
        ArgumentNullException.ThrowIfNull(scales);
        if (priors.Count != Count || scales.Count != Count)
        {
            throw new ArgumentException("a prior is needed for each parameter", nameof(priors));
        }

        this.priors = [.. priors];
        this.scales = [.. scales];
        usual = [.. priors.Select(p => p.Typical)];
    }

    /// <summary>The number of parameters.</summary>
    public static int Count { get; } = Enum.GetValues<HeapParameter>().Length;

    /// <summary>The usual value.</summary>
    /// <param name="parameter">The parameter.</param>
    public double Usual(HeapParameter parameter) => usual[(int)parameter];

    /// <summary>The prior.</summary>
    /// <param name="parameter">The parameter.</param>
    public Spread Prior(HeapParameter parameter) => priors[(int)parameter];

    /// <summary>The scale on which the prior is normal.</summary>
    /// <param name="parameter">The parameter.</param>
    public SpreadScale Scale(HeapParameter parameter) => scales[(int)parameter];

    /// <summary>The table with other usual values; their priors are moved along in proportion.</summary>
    /// <param name="changes">The parameters that change.</param>
    public HeapParameters With(params (HeapParameter Parameter, double Value)[] changes)
    {
        ArgumentNullException.ThrowIfNull(changes);
        var moved = (Spread[])priors.Clone();
        foreach (var (parameter, value) in changes)
        {
            var old = moved[(int)parameter];
            moved[(int)parameter] =
                old.IsExact ? Spread.Exact(value)
                : scales[(int)parameter] == SpreadScale.Positive ? old.Times(value / old.Typical)
                : Spread.Of(old.Low + value - old.Typical, value, old.High + value - old.Typical);
        }

        return new HeapParameters(moved, scales);
    }
}
