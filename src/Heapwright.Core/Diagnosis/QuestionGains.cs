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
        var worth = new List<QuestionWorth>();
        foreach (var question in questions)
        {
            var gain = Gain(model, question, states, weights, weighing, start);
            if (gain > LeastGain)
            {
                worth.Add(new QuestionWorth(question, gain));
            }
        }

        worth.Sort(
            static (a, b) =>
                (b.Gain * b.Question.Ease).CompareTo(a.Gain * a.Question.Ease)
                    is not 0
                        and var order
                    ? order
                    : string.CompareOrdinal(a.Question.Code, b.Question.Code)
        );
        return [.. worth];
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
        var words = field.PlacesOf(question.Options);
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
                CauseChances.Add(
                    holding,
                    weight,
                    new Span<double>(sums, o * causes, causes),
                    model.Roles
                );
            }
        }

        var (after, all) = (0.0, 0.0);
        for (var o = 0; o < outcomes; o++)
        {
            all += totals[o];
            if (totals[o] > 0)
            {
                var row = new Span<double>(sums, o * causes, causes);
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

    // From the lightest of those that are kept to the heaviest.
    private static (int[] States, double[] Weights) Heaviest(ReadOnlySpan<double> posterior)
    {
        // All states below this weight together are less than what may be left out.
        var least = (1 - Kept) / posterior.Length;
        var (order, weights, count) = (new int[posterior.Length], new double[posterior.Length], 0);
        for (var s = 0; s < posterior.Length; s++)
        {
            if (posterior[s] >= least)
            {
                (order[count], weights[count]) = (s, posterior[s]);
                count++;
            }
        }

        Sort(weights, order, count);
        var (first, sum) = (count, 0.0);
        while (first > 0 && sum < Kept && count - first < MostStates)
        {
            first--;
            sum += weights[first];
        }

        var (states, kept) = (new int[count - first], new double[count - first]);
        for (var k = 0; k < kept.Length; k++)
        {
            (states[k], kept[k]) = (order[first + k], weights[first + k] / sum);
        }

        return (states, kept);
    }

    // By weight, and by number where weights are equal; heap sort. Array.Sort of two arrays of numbers is compiled anew at
    // every start of the program.
    private static void Sort(double[] weights, int[] order, int count)
    {
        for (var root = (count / 2) - 1; root >= 0; root--)
        {
            Sink(weights, order, root, count);
        }

        for (var end = count - 1; end > 0; end--)
        {
            (weights[0], weights[end]) = (weights[end], weights[0]);
            (order[0], order[end]) = (order[end], order[0]);
            Sink(weights, order, 0, end);
        }
    }

    private static void Sink(double[] weights, int[] order, int root, int count)
    {
        bool IsBefore(int a, int b) =>
            weights[a] < weights[b] || (weights[a] == weights[b] && order[a] < order[b]);
        while ((2 * root) + 1 < count)
        {
            var child = (2 * root) + 1;
            child += child + 1 < count && IsBefore(child, child + 1) ? 1 : 0;
            if (!IsBefore(root, child))
            {
                return;
            }

            (weights[root], weights[child]) = (weights[child], weights[root]);
            (order[root], order[child]) = (order[child], order[root]);
            root = child;
        }
    }

    // What is in question is to be settled first: a cause for which nothing speaks weighs less.
    private static double[] Weighing(SignModel model, double[] chances)
    {
        var usual = model.UsualChances;
        var weighing = new double[chances.Length];
        for (var c = 0; c < weighing.Length; c++)
        {
            weighing[c] = chances[c] > InQuestion * usual.Of(c) ? 1 : NotInQuestion;
        }

        return weighing;
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
