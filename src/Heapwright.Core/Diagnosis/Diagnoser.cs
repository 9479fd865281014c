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
    private readonly double[][] likelihoods;
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
        likelihoods = [.. this.facts.Select(Likelihoods)];
        posterior = [.. states.Chances];
        foreach (var likelihood in likelihoods)
        {
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
        return new DiagnosisAnswer(
            [
                .. model
                    .Causes.Select((cause, c) => Found(cause, c, chances, without))
                    // Fire goes before everything.
                    .OrderByDescending(c => c.Cause.MayBurn && c.Probability >= FireFirst)
                    .ThenByDescending(c => c.Probability)
                    .ThenBy(c => c.Cause.Id, StringComparer.Ordinal),
            ],
            chances.Healthy,
            QuestionGains.Of(model, posterior, questions),
            Contradictions()
        );
    }

    private CauseFound Found(HeapCause cause, int at, CauseChances chances, CauseChances[] without)
    {
        var odds = LogOdds(chances.Of(at));
        var weighed = facts
            .Select((fact, f) => (Fact: fact, Weight: odds - LogOdds(without[f].Of(at))))
            .Where(w => w.Fact is not UnsaidFact)
            .ToList();
        return new CauseFound(
            cause,
            chances.Of(at),
            [
                .. weighed
                    .Where(w => w.Weight > LeastWeight)
                    // The trouble itself is known to whoever asks; what else was told comes first.
                    .OrderBy(w => w.Fact.Place == "worry")
                    .ThenByDescending(w => w.Weight)
                    .Select(w => w.Fact),
            ],
            [
                .. weighed
                    .Where(w => w.Weight < -LeastWeight)
                    .OrderBy(w => w.Weight)
                    .Select(w => w.Fact),
            ]
        );
    }

    // Two facts contradict each other where a table says so, or where both together are far rarer than each by itself
    // would make them.
    private ImmutableArray<(SignFact One, SignFact Other)> Contradictions()
    {
        var common = model.States.Common;
        var single = likelihoods.Select(l => Sum(common, l, null)).ToList();
        var found = new List<(double Lift, SignFact One, SignFact Other)>();
        for (var a = 0; a < facts.Length; a++)
        {
            for (var b = a + 1; b < facts.Length; b++)
            {
                var lift = Sum(common, likelihoods[a], likelihoods[b]) / (single[a] * single[b]);
                var isClash = model.Clashes.Any(c => c.IsBetween(facts[a], facts[b]));
                if (
                    facts[a] is not UnsaidFact
                    && facts[b] is not UnsaidFact
                    && (lift < SeldomTogether || isClash)
                )
                {
                    found.Add((lift, facts[a], facts[b]));
                }
            }
        }

        return [.. found.OrderBy(f => f.Lift).Select(f => (f.One, f.Other))];
    }

    // States that differ only in what the fact does not depend on share its likelihood; it is worked out once for them.
    private double[] Likelihoods(SignFact fact)
    {
        const int Bits = 6;
        var states = model.States;
        var likelihood = new double[states.Chances.Length];
        var depends = new bool[model.GivenCount];
        for (var g = 0; g < depends.Length; g++)
        {
            depends[g] = fact.DependsOn(g);
        }

        var known = new Dictionary<int, double>();
        for (var s = 0; s < likelihood.Length; s++)
        {
            var holding = states.Of(s);
            var key = 0;
            foreach (var given in holding)
            {
                key = (key << Bits) | (given >= 0 && depends[given] ? given + 1 : 0);
            }

            if (!known.TryGetValue(key, out var value))
            {
                known[key] = value = fact.Likelihood(holding);
            }

            likelihood[s] = value;
        }

        return likelihood;
    }

    private static double Sum(
        (int[] States, double[] Chances) common,
        double[] one,
        double[]? other
    )
    {
        var (states, chances) = common;
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
