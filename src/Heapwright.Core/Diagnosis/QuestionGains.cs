using System.Collections.Immutable;

namespace Heapwright.Core.Diagnosis;

/// <summary>What the answer to a question is expected to settle.</summary>
internal static class QuestionGains
{
    private const double Kept = 0.998; // share of the weight that is looked at
    private const int MostStates = 4000;
    private const double LeastGain = 0.01;
    private const double NotInQuestion = 0.3; // weight of a cause that nothing told speaks for
    private const double InQuestion = 1.5; // times its usual chance, from which a cause is in question

    /// <summary>The questions that are worth asking, the best first.</summary>
    public static ImmutableArray<QuestionWorth> Of(
        SignModel model,
        ReadOnlySpan<double> posterior,
        IEnumerable<SignQuestion> questions
    )
    {
        var (states, weights) = Heaviest(posterior);
        var before = new double[model.Causes.Length];
        for (var k = 0; k < states.Length; k++)
        {
            CauseChances.Add(model.States.Of(states[k]), weights[k], before, model.Roles);
        }

        var weighing = Weighing(model, before);
        var start = Uncertainty(before, weighing);
        return
        [
            .. questions
                .Select(q => new QuestionWorth(q, Gain(model, q, states, weights, weighing, start)))
                .Where(w => w.Gain > LeastGain)
                .OrderByDescending(w => w.Gain * w.Question.Ease)
                .ThenBy(w => w.Question.Code, StringComparer.Ordinal),
        ];
    }

    private static double Gain(
        SignModel model,
        SignQuestion question,
        int[] states,
        double[] weights,
        double[] weighing,
        double start
    )
    {
        var field = model.Field(question.Field);
        int[] words = [.. question.Options.Select(o => field.Words.IndexOf(o))];
        var outcomes = words.Length + (field.HasOneAnswer ? 0 : 1);
        var causes = model.Causes.Length;
        var chances = new double[field.Words.Length];
        var likely = new double[outcomes];
        var (totals, sums) = (new double[outcomes], new double[outcomes * causes]);
        for (var k = 0; k < states.Length; k++)
        {
            var holding = model.States.Of(states[k]);
            field.Chances(holding, chances);
            Outcomes(field, words, chances, likely);
            for (var o = 0; o < outcomes; o++)
            {
                var weight = weights[k] * likely[o];
                totals[o] += weight;
                CauseChances.Add(holding, weight, sums.AsSpan(o * causes, causes), model.Roles);
            }
        }

        var (after, all) = (0.0, 0.0);
        for (var o = 0; o < outcomes; o++)
        {
            all += totals[o];
            if (totals[o] > 0)
            {
                var row = sums.AsSpan(o * causes, causes);
                foreach (ref var sum in row)
                {
                    sum /= totals[o];
                }

                after += totals[o] * Uncertainty(row, weighing);
            }
        }

        return start - (after / all);
    }

    // Of several words the one that strikes first is told, or none of them.
    private static void Outcomes(SignField field, int[] words, double[] chances, double[] likely)
    {
        if (field.HasOneAnswer)
        {
            for (var o = 0; o < words.Length; o++)
            {
                likely[o] = chances[words[o]];
            }

            return;
        }

        var (none, sum) = (1.0, 0.0);
        foreach (var word in words)
        {
            none *= 1 - chances[word];
            sum += chances[word];
        }

        for (var o = 0; o < words.Length; o++)
        {
            likely[o] = sum > 0 ? (1 - none) * chances[words[o]] / sum : 0;
        }

        likely[^1] = none;
    }

    private static (int[] States, double[] Weights) Heaviest(ReadOnlySpan<double> posterior)
    {
        var weights = posterior.ToArray();
        var order = new int[weights.Length];
        for (var s = 0; s < order.Length; s++)
        {
            order[s] = s;
        }

        Array.Sort(weights, order);
        var (first, sum) = (weights.Length, 0.0);
        while (first > 0 && sum < Kept && weights.Length - first < MostStates)
        {
            first--;
            sum += weights[first];
        }

        var kept = weights[first..];
        for (var k = 0; k < kept.Length; k++)
        {
            kept[k] /= sum;
        }

        return (order[first..], kept);
    }

    // What is in question is to be settled first: a cause for which nothing speaks weighs less.
    private static double[] Weighing(SignModel model, double[] chances)
    {
        var usual = model.UsualChances;
        return [.. chances.Select((p, c) => p > InQuestion * usual.Of(c) ? 1 : NotInQuestion)];
    }

    private static double Uncertainty(ReadOnlySpan<double> chances, double[] weighing)
    {
        var sum = 0.0;
        for (var c = 0; c < chances.Length; c++)
        {
            var p = chances[c];
            sum -= p is > 1e-12 and < 1 - 1e-12
                ? weighing[c] * ((p * Math.Log(p)) + ((1 - p) * Math.Log(1 - p)))
                : 0;
        }

        return sum;
    }
}
