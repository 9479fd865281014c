using System.Collections.Immutable;

namespace Heapwright.Core.FinishedCompost;

/// <summary>How far a heap has come, from everything that was seen and measured.</summary>
/// <param name="Chances">Shape [stage]; together 1.</param>
/// <param name="Clues">What it rests on.</param>
/// <param name="Contradictions">Pairs of clues of which each speaks against the other.</param>
public sealed record StageFinding(
    ImmutableArray<double> Chances,
    ImmutableArray<StageClue> Clues,
    ImmutableArray<(StageClue Earlier, StageClue Later)> Contradictions
)
{
    /// <summary>From which chance on a stage is named.</summary>
    public const double Enough = 0.5;

    /// <summary>The likeliest stage; null where none is likely enough.</summary>
    public CompostStage? Stage
    {
        get
        {
            for (var i = 0; i < Chances.Length; i++)
            {
                if (Chances[i] >= Enough)
                {
                    return (CompostStage)i;
                }
            }

            return null;
        }
    }

    /// <summary>The chance that a stage is reached or passed.</summary>
    /// <param name="stage">The stage.</param>
    public double Reached(CompostStage stage) => Math.Min(1, Chances.Skip((int)stage).Sum());
}
