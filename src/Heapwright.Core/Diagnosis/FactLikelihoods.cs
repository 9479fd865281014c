namespace Heapwright.Core.Diagnosis;

/// <summary>How likely a fact is in each state of a heap: few values, and which of them each state has.</summary>
internal sealed class FactLikelihoods
{
    private const int Bits = 6; // of a key, for each thing that may hold

    private readonly double[] values;
    private readonly ushort[] byState;

    private FactLikelihoods(double[] values, ushort[] byState) =>
        (this.values, this.byState) = (values, byState);

    /// <summary>The likelihood in a state.</summary>
    /// <param name="state">The state.</param>
    public double this[int state] => values[byState[state]];

    /// <summary>
    /// Works out a fact. States that differ only in what it does not depend on share its likelihood, which is worked out
    /// once for them.
    /// </summary>
    /// <param name="fact">The fact.</param>
    /// <param name="share">How much of it counts, above 0 to 1: its likelihood is raised to this power.</param>
    /// <param name="model">The model.</param>
    /// <param name="known">Where to work; what it knew is forgotten.</param>
    public static FactLikelihoods Of(
        SignFact fact,
        double share,
        SignModel model,
        KnownLikelihoods known
    )
    {
        var states = model.States;
        var numberOf = new ushort[states.Chances.Length];
        var keys = new int[model.GivenCount];
        for (var g = 0; g < keys.Length; g++)
        {
            keys[g] = fact.DependsOn(g) ? g + 1 : 0;
        }

        known.Clear();
        for (var set = 0; set < states.SetCount; set++)
        {
            var (first, end) = (states.FirstOf(set), states.FirstOf(set + 1));
            if (first == end)
            {
                continue;
            }

            var faults = 0;
            foreach (var fault in states.Of(first)[2..])
            {
                faults = (faults << Bits) | (fault < 0 ? 0 : keys[fault]);
            }

            var (before, number) = (-1, 0);
            for (var s = first; s < end; s++)
            {
                var holding = states.Of(s);
                var stage = holding[0] < 0 ? 0 : keys[holding[0]];
                var key = (((faults << Bits) | stage) << Bits) | keys[holding[1]];
                if (key != before)
                {
                    number = known.NumberOf(key, fact, holding);
                    before = key;
                }

                numberOf[s] = (ushort)number;
            }
        }

        var raised = known.Values();
        for (var v = 0; v < raised.Length && share < 1; v++)
        {
            raised[v] = Math.Pow(raised[v], share);
        }

        return new FactLikelihoods(raised, numberOf);
    }
}
