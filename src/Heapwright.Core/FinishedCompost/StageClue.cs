using System.Collections.Immutable;

namespace Heapwright.Core.FinishedCompost;

/// <summary>One thing that speaks for a stage.</summary>
/// <param name="Group">Its group.</param>
/// <param name="Sign">What was looked at.</param>
/// <param name="Found">What was found.</param>
/// <param name="Likelihood">Shape [stage]: the chance of finding it at each stage.</param>
/// <param name="Weight">How much it is leant on, 0 to 1.</param>
public sealed record StageClue(
    string Group,
    string Sign,
    string Found,
    ImmutableArray<double> Likelihood,
    double Weight
)
{
    /// <summary>The stage it speaks for most.</summary>
    public CompostStage Points
    {
        get
        {
            var best = 0;
            for (var i = 1; i < Likelihood.Length; i++)
            {
                best = Likelihood[i] > Likelihood[best] ? i : best;
            }

            return (CompostStage)best;
        }
    }

    /// <summary>How many times likelier it is at one stage than at another, by its weight.</summary>
    /// <param name="at">The one.</param>
    /// <param name="than">The other.</param>
    public double Ratio(CompostStage at, CompostStage than) =>
        Math.Pow(Likelihood[(int)at] / Likelihood[(int)than], Weight);
}
