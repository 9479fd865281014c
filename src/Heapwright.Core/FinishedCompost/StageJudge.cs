using System.Collections.Immutable;

namespace Heapwright.Core.FinishedCompost;

/// <summary>
/// Weighs clues against one another. Before anything is known every stage is as likely. Clues of one group share a
/// cause, so the group counts as its weighted mean on the logarithmic scale, leant on as much as its strongest clue.
/// n groups, which still share one heap and one nose, count as n^0.75.
/// </summary>
public static class StageJudge
{
    private const int Stages = 4;
    private const int MostContradictions = 5;
    private const double Shared = -0.25;
    private const double Against = 3; // a clue speaks against a stage where it is three times likelier elsewhere

    /// <summary>The chances of the stages.</summary>
    /// <param name="clues">What was found.</param>
    public static StageFinding Judge(ImmutableArray<StageClue> clues)
    {
        var logs = new double[Stages];
        var groups = clues.Select(c => c.Group).Distinct(StringComparer.Ordinal).ToArray();
        // Groups are not independent either: n of them count as n^0.75.
        var leaning = Math.Pow(Math.Max(1, groups.Length), Shared);
        foreach (var group in groups)
        {
            StageClue[] members = [.. clues.Where(c => c.Group == group)];
            var all = members.Sum(c => c.Weight);
            var strongest = members.Max(c => c.Weight);
            for (var s = 0; s < Stages; s++)
            {
                var mean = members.Sum(c => c.Weight * Math.Log(c.Likelihood[s])) / all;
                logs[s] += leaning * strongest * mean;
            }
        }

        var top = logs.Max();
        var total = logs.Sum(l => Math.Exp(l - top));
        return new StageFinding(
            [.. logs.Select(l => Math.Exp(l - top) / total)],
            clues,
            Contradictions(clues)
        );
    }

    /// <summary>A clue from a place on a scale, the chances of its classes weighed in; null where no row speaks of it.</summary>
    /// <param name="finding">The place on the scale.</param>
    /// <param name="rows">How often each class is met at each stage.</param>
    public static StageClue? Clue(ScaleFinding finding, IEnumerable<EvidenceRow> rows)
    {
        ArgumentNullException.ThrowIfNull(finding);
        var known = rows.Where(r => r.Sign == finding.Scale.Id).ToArray();
        if (known.Length == 0)
        {
            return null;
        }

        var likelihood = new double[Stages];
        for (var i = 0; i < finding.Chances.Length; i++)
        {
            var row = known.Single(r => r.Found == finding.Scale.Classes[i].Name);
            for (var s = 0; s < Stages; s++)
            {
                likelihood[s] += finding.Chances[i] * row.Likelihood[s];
            }
        }

        return new StageClue(
            known[0].Group,
            finding.Scale.Id,
            finding.Class.Name,
            [.. likelihood],
            known[0].Weight
        );
    }

    private static ImmutableArray<(StageClue, StageClue)> Contradictions(
        ImmutableArray<StageClue> clues
    )
    {
        var found = ImmutableArray.CreateBuilder<(StageClue, StageClue)>();
        for (var i = 0; i < clues.Length; i++)
        {
            for (var j = i + 1; j < clues.Length; j++)
            {
                var (a, b) =
                    clues[i].Points <= clues[j].Points
                        ? (clues[i], clues[j])
                        : (clues[j], clues[i]);
                if (
                    b.Points - a.Points > 1
                    && a.Ratio(a.Points, b.Points) >= Against
                    && b.Ratio(b.Points, a.Points) >= Against
                    && found.Count < MostContradictions
                )
                {
                    found.Add((a, b));
                }
            }
        }

        return found.ToImmutable();
    }
}
