namespace Heapwright.Core.Diagnosis;

/// <summary>The chance of each cause under weights of the states.</summary>
internal sealed class CauseChances
{
    private const double Negligible = 1e-9; // weight of a state that tells nothing of why

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

    /// <summary>Sums the states as if one fact had not been told, for each fact.</summary>
    /// <param name="model">The model.</param>
    /// <param name="posterior">A weight for each state with all facts.</param>
    /// <param name="likelihoods">For each fact its likelihood in each state.</param>
    public static CauseChances[] WithoutEach(
        SignModel model,
        double[] posterior,
        FactLikelihoods[] likelihoods
    )
    {
        var causes = model.Causes.Length;
        var (states, roles) = (model.States, model.Roles);
        var sums = new double[likelihoods.Length][];
        var (totals, healthy) = (new double[sums.Length], new double[sums.Length]);
        for (var f = 0; f < sums.Length; f++)
        {
            sums[f] = new double[causes];
            var likelihood = likelihoods[f];
            for (var s = 0; s < posterior.Length; s++)
            {
                if (posterior[s] < Negligible)
                {
                    continue;
                }

                var weight = posterior[s] / likelihood[s];
                if (weight > 0)
                {
                    totals[f] += weight;
                    healthy[f] += Add(states.Of(s), weight, sums[f], roles) ? weight : 0;
                }
            }
        }

        var without = new CauseChances[sums.Length];
        for (var f = 0; f < sums.Length; f++)
        {
            foreach (ref var sum in new Span<double>(sums[f]))
            {
                sum /= totals[f];
            }

            without[f] = new CauseChances(sums[f], healthy[f] / totals[f]);
        }

        return without;
    }

    /// <summary>Adds a state to the chances of causes; true where the heap is healthy in it.</summary>
    internal static bool Add(
        ReadOnlySpan<sbyte> holding,
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
