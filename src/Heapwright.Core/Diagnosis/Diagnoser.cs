using System.Collections.Immutable;

namespace Heapwright.Core.Diagnosis;

/// <summary>
/// Finds what explains the facts: Bayes' rule over every state of a heap. What is not told is not assumed; it is summed
/// over. The same facts give the same answer, in any order.
/// </summary>
public sealed class Diagnoser
{
    private const double SeldomTogether = 0.05;
    private const double FireFirst = 0.5; // chance from which a fire is named first
    private const double LeastWeight = 0.12; // of a fact for or against, in log odds

    private readonly SignModel model;
    private readonly ImmutableArray<SignFact> facts;
    private readonly FactLikelihoods[] likelihoods;
    private readonly double[] posterior;

    /// <summary>Weighs facts.</summary>
    /// <param name="model">The causes and signs.</param>
    /// <param name="facts">What is known.</param>
    public Diagnoser(SignModel model, IEnumerable<SignFact> facts)
    {
        ArgumentNullException.ThrowIfNull(model);
        this.model = model;
        this.facts = [.. facts];
        var states = model.States;
        var known = new KnownLikelihoods(states.Chances.Length);
        likelihoods = new FactLikelihoods[this.facts.Length];
        posterior = (double[])states.Chances.Clone();
        for (var f = 0; f < likelihoods.Length; f++)
        {
            var likelihood = likelihoods[f] = FactLikelihoods.Of(
                this.facts[f],
                ShareOf(this.facts[f]),
                model,
                known
            );
            for (var s = 0; s < posterior.Length; s++)
            {
                posterior[s] *= likelihood[s];
            }

            // Scaled at each fact, so that many facts do not run out of digits.
            Scale(posterior);
        }
    }

    /// <summary>Finds the causes, and what to ask next.</summary>
    /// <param name="questions">What can be asked; what is known or was not known when asked is left out by the caller.</param>
    public DiagnosisAnswer Answer(IEnumerable<SignQuestion> questions)
    {
        var chances = CauseChances.Of(model, posterior);
        var without = CauseChances.WithoutEach(model, posterior, likelihoods);
        var causes = new List<CauseFound>();
        for (var c = 0; c < model.Causes.Length; c++)
        {
            causes.Add(Found(model.Causes[c], c, chances, without));
        }

        causes.Sort(ByUrgencyAndChance);
        return new DiagnosisAnswer(
            [.. causes],
            chances.Healthy,
            QuestionGains.Of(model, posterior, questions),
            Contradictions()
        );
    }

    // Of a sign that was told in several words each word counts in part, so that together they count once.
    private double ShareOf(SignFact fact)
    {
        var same = model.Same.FirstOrDefault(s => s.IsTold(fact));
        return same is null ? 1 : 1.0 / facts.Count(same.IsTold);
    }

    // Fire goes before everything.
    private static int ByUrgencyAndChance(CauseFound one, CauseFound other)
    {
        static bool Burns(CauseFound c) => c.Cause.MayBurn && c.Probability >= FireFirst;
        return Burns(one) != Burns(other) ? (Burns(one) ? -1 : 1)
            : other.Probability.CompareTo(one.Probability) is not 0 and var order ? order
            : string.CompareOrdinal(one.Cause.Id, other.Cause.Id);
    }

    private CauseFound Found(HeapCause cause, int at, CauseChances chances, CauseChances[] without)
    {
        var odds = LogOdds(chances.Of(at));
        var (speaking, against) = (new List<WeighedFact>(), new List<WeighedFact>());
        for (var f = 0; f < facts.Length; f++)
        {
            var weight = odds - LogOdds(without[f].Of(at));
            if (facts[f] is not UnsaidFact && Math.Abs(weight) > LeastWeight)
            {
                (weight > 0 ? speaking : against).Add(new WeighedFact(facts[f], weight, f));
            }
        }

        // The trouble itself is known to whoever asks; what else was told comes first.
        speaking.Sort(
            static (a, b) =>
                a.IsWorry != b.IsWorry ? a.IsWorry.CompareTo(b.IsWorry) : WeighedFact.Compare(a, b)
        );
        against.Sort(WeighedFact.Compare);
        return new CauseFound(cause, chances.Of(at), Told(speaking), Told(against));
    }

    private static ImmutableArray<SignFact> Told(List<WeighedFact> weighed) =>
        [.. weighed.Select(w => w.Fact)];

    // Two facts contradict each other where a table says so, or where both together are far rarer than each by itself
    // would make them.
    private ImmutableArray<FactPair> Contradictions()
    {
        var single = new double[facts.Length];
        for (var f = 0; f < single.Length; f++)
        {
            single[f] = Sum(likelihoods[f], null);
        }

        var found = new List<FactPair>();
        for (var a = 0; a < facts.Length; a++)
        {
            for (var b = a + 1; b < facts.Length; b++)
            {
                if (facts[a] is UnsaidFact || facts[b] is UnsaidFact)
                {
                    continue;
                }

                var lift = Sum(likelihoods[a], likelihoods[b]) / (single[a] * single[b]);
                if (
                    lift < SeldomTogether
                    || model.Clashes.Any(c => c.IsBetween(facts[a], facts[b]))
                )
                {
                    Insert(found, new FactPair(facts[a], facts[b], lift));
                }
            }
        }

        return [.. found];
    }

    // Behind all that are as rare or rarer.
    private static void Insert(List<FactPair> pairs, FactPair pair)
    {
        var at = pairs.Count;
        while (at > 0 && pairs[at - 1].Lift > pair.Lift)
        {
            at--;
        }

        pairs.Insert(at, pair);
    }

    private double Sum(FactLikelihoods one, FactLikelihoods? other)
    {
        var (states, chances) = (model.States.CommonStates, model.States.CommonChances);
        var sum = 0.0;
        for (var k = 0; k < states.Length; k++)
        {
            var s = states[k];
            sum += chances[k] * one[s] * (other is null ? 1 : other[s]);
        }

        return sum;
    }

    private static void Scale(double[] weights)
    {
        var sum = 0.0;
        foreach (var weight in weights)
        {
            sum += weight;
        }

        for (var s = 0; s < weights.Length; s++)
        {
            weights[s] /= sum;
        }
    }

    private static double LogOdds(double chance)
    {
        var held = Math.Clamp(chance, 1e-9, 1 - 1e-9);
        return Math.Log(held / (1 - held));
    }
}
