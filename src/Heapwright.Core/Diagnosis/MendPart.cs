using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.Diagnosis;

/// <summary>One thing at hand that would mend a heap by itself.</summary>
/// <param name="Stuff">What, and how much of it there is.</param>
/// <param name="Needed">How many of its unit it takes.</param>
public sealed record MendPart(Ingredient Stuff, Spread Needed)
{
    /// <summary>How many of its unit there are.</summary>
    public double There => Stuff.Amount.Typical;

    /// <summary>Whether what is there is likely to be enough.</summary>
    public bool IsEnough => Needed.Typical <= There;

    /// <summary>What to take: never more than there is.</summary>
    public Spread Take =>
        Spread.Of(
            Math.Min(Needed.Low, There),
            Math.Min(Needed.Typical, There),
            Math.Min(Needed.High, There)
        );

    /// <summary>How many of its unit are likely to be wanting.</summary>
    public double Wanting => Math.Max(0, Needed.Typical - There);

    /// <summary>How many of its unit may be wanting at the most.</summary>
    public double MayBeWanting => Math.Max(0, Needed.High - There);

    /// <summary>The share of the whole that what is there does, 0 to 1.</summary>
    public double Share => Math.Min(1, There / Needed.Typical);

    /// <summary>
    /// The share that several things do together: water, carbon and nitrogen add up, and so do layers. It may be above 1.
    /// </summary>
    /// <param name="parts">The things.</param>
    public static double Together(IEnumerable<MendPart> parts) => parts.Sum(p => p.Share);
}
