using System.Text.Json.Nodes;
using Heapwright.App.Library;
using Heapwright.Core.Diagnosis;

namespace Heapwright.Validation.Signs;

/// <summary>Whether the chances mean what they say: on heaps drawn from the model, and on written cases.</summary>
public class SignCalibrationTests(ITestOutputHelper output)
{
    private const int Drawn = 300;
    private const int Bins = 5;

    [Fact]
    public void Of_causes_given_a_chance_that_share_holds_in_heaps_drawn_from_the_model()
    {
        var model = SignModelReader.Model;
        var fields = model
            .Fields.Where(f =>
                f.Id is not ("stage" or "heat") && f.Words.All(w => !char.IsAsciiDigit(w[^1]))
            )
            .OrderBy(f => f.Id, StringComparer.Ordinal)
            .ToList();
        var random = new Random(20261128);
        var (said, held, count) = (new double[Bins], new double[Bins], new int[Bins]);
        for (var n = 0; n < Drawn; n++)
        {
            var holding = Draw(model, random);
            var facts = Facts(fields, holding, random);
            foreach (var found in new Diagnoser(model, facts).Answer([]).Causes)
            {
                if (found.Cause.Group == CauseGroup.Stage)
                {
                    continue;
                }

                var bin = Math.Min(Bins - 1, (int)(found.Probability * Bins));
                said[bin] += found.Probability;
                held[bin] += holding[2..].Contains((sbyte)model.Given(found.Cause.Id)) ? 1 : 0;
                count[bin]++;
            }
        }

        for (var b = 0; b < Bins; b++)
        {
            var (mean, share) = (said[b] / count[b], held[b] / count[b]);
            output.WriteLine(
                FormattableString.Invariant($"said {mean:P1}, held {share:P1}, of {count[b]}")
            );
            // Four standard errors of a share: one false alarm in ten thousand.
            var error = Math.Sqrt(Math.Max(mean * (1 - mean), 1e-4) / count[b]);
            Assert.InRange(share, mean - (4 * error), mean + (4 * error));
        }
    }

    [Fact]
    public void Chances_of_first_causes_and_of_healthy_heaps_are_measured_on_written_cases()
    {
        var scores = SignScore.Written;
        output.WriteLine("first cause right:");
        var first = Reliability(scores.Select(s => (s.FirstChance, s.FirstIsRight)));
        output.WriteLine("healthy:");
        var healthy = Reliability(
            scores
                .Where(s => s.Case.Healthy is not null)
                .Select(s => (s.Healthy, s.Case.Healthy!.Value))
        );
        // The mean square of what was said against what was so: better than saying the base rate of each to all.
        Assert.True(first < 0.16, "first");
        Assert.True(healthy < 0.1, "healthy");
    }

    [Fact]
    public void With_a_fact_taken_away_the_answer_gets_less_sure_but_seldom_absurd()
    {
        var (all, right, wrong, sure, surer) = (0, 0, 0, 0.0, 0.0);
        foreach (var whole in SignScore.Written)
        {
            var written = whole.Case;
            foreach (var less in Less(written.Question))
            {
                var score = SignScore.Of(written with { Question = less });
                all++;
                right += score.FirstIsRight ? 1 : 0;
                wrong += score.FirstIsWrong ? 1 : 0;
                sure += score.FirstChance;
                surer += whole.FirstChance;
            }
        }

        output.WriteLine(
            FormattableString.Invariant(
                $"{all} questions with one fact less: first right {(double)right / all:P1}, plainly wrong {(double)wrong / all:P1}, mean chance of the first {sure / all:P1} (with it {surer / all:P1})"
            )
        );
        Assert.True(sure < surer, "less sure");
        Assert.True((double)wrong / all < 0.1, "absurd");
    }

    private double Reliability(IEnumerable<(double Said, bool Was)> pairs)
    {
        var all = pairs.ToList();
        foreach (
            var bin in all.GroupBy(p => Math.Min(Bins - 1, (int)(p.Said * Bins)))
                .OrderBy(g => g.Key)
        )
        {
            output.WriteLine(
                FormattableString.Invariant(
                    $"  said {bin.Average(p => p.Said):P0}, was {(double)bin.Count(p => p.Was) / bin.Count():P0}, of {bin.Count()}"
                )
            );
        }

        return all.Average(p => Math.Pow(p.Said - (p.Was ? 1 : 0), 2));
    }

    private static sbyte[] Draw(SignModel model, Random random)
    {
        var (states, left) = (model.States, random.NextDouble());
        var at = 0;
        while (at < states.Chances.Length - 1 && (left -= states.Chances[at]) > 0)
        {
            at++;
        }

        return states.Of(at).ToArray();
    }

    // Up to ten fields are answered; of a field of several words, two words are looked for.
    private static IEnumerable<SignFact> Facts(
        List<SignField> fields,
        sbyte[] holding,
        Random random
    )
    {
        const double Overlooked = 0.2;
        foreach (var field in random.GetItems([.. fields], 10).Distinct())
        {
            var chances = new double[field.Words.Length];
            field.Chances(holding, chances);
            if (field.HasOneAnswer)
            {
                var left = random.NextDouble();
                var word = 0;
                while (word < chances.Length - 1 && (left -= chances[word]) > 0)
                {
                    word++;
                }

                yield return new ChoiceFact(field, field.Words[word]);
                continue;
            }

            foreach (
                var word in random
                    .GetItems(Enumerable.Range(0, chances.Length).ToArray(), 2)
                    .Distinct()
            )
            {
                // A sign is there, noticed or not; what is not noticed is told as absent.
                var isTold =
                    random.NextDouble() < chances[word] && random.NextDouble() >= Overlooked;
                yield return isTold
                    ? new WordFact(field, field.Words[word], isAbsence: false)
                    : new WordFact(field, field.Words[word], isAbsence: true, Overlooked);
            }
        }
    }

    // Every question with one leaf less; a worry is left, since without it nobody asks.
    private static IEnumerable<JsonObject> Less(JsonObject question)
    {
        foreach (var (section, node) in question)
        {
            if (node is not JsonObject inner || section == "weather")
            {
                continue;
            }

            foreach (var (name, _) in inner.ToList())
            {
                var less = question.DeepClone().AsObject();
                less[section]!.AsObject().Remove(name);
                yield return less;
            }
        }
    }
}
