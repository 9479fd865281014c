namespace Heapwright.Core.Diagnosis;

/// <summary>The chance of each cause under weights of the states.</summary>
internal sealed class CauseChances
{
    private readonly double[] chances;

    private CauseChances(double[] chances, double healthy) =>
        (this.chances, Healthy) = (chances, healthy);

    /// <summary>The chance that nothing needs changing.</summary>
    public double Healthy { get; }

    /// <summary>The chance of a cause.</summary>
    /// <param name="cause">Its place in the table.</param>
    public double Of(int cause) => chances[cause];

    /// <summary>Sums the states.</summary>
    /// <param name="model">The model.</param>
    /// <param name="weights">A weight for each state, adding up to one.</param>
    public static CauseChances Of(SignModel model, ReadOnlySpan<double> weights)
    {
        var sums = new double[model.Causes.Length];
        var (states, roles) = (model.States, model.Roles);
        var healthy = 0.0;
        for (var s = 0; s < weights.Length; s++)
        {
            var weight = weights[s];
            if (weight > 0)
            {
                healthy += Add(states.Of(s), weight, sums, roles) ? weight : 0;
            }
        }

        return new CauseChances(sums, healthy);
    }

    /// <summary>Adds a state to the chances of causes; true where the heap is healthy in it.</summary>
    internal static bool Add(
        ReadOnlySpan<int> holding,
        double weight,
        Span<double> sums,
        StateRoles roles
    )
    {
        var (isFaulty, explains) = (false, false);
        foreach (var fault in holding[2..])
        {
            if (fault >= 0)
            {
                sums[fault] += weight;
                isFaulty |= roles.IsFault[fault];
                explains |= roles.Explains[fault];
            }
        }

        // A stage explains what is seen only where no fault does: a hot heap that stinks is not explained by being hot.
        var stage = holding[0];
        var isStage = stage < sums.Length;
        if (isStage && !(roles.IsQuiet[stage] ? isFaulty : explains))
        {
            sums[stage] += weight;
        }

        return isStage && !isFaulty;
    }
}
