namespace Heapwright.Core.BuildPlans;

/// <summary>One way to lay the stuff, and how good it is.</summary>
/// <param name="Drafts">The layers from the ground up, none empty.</param>
/// <param name="Excess">The thickest layer against its limit; at most 1 if all keep it.</param>
/// <param name="OffMiddle">How far kitchen scraps stick out of the middle third, m.</param>
/// <param name="Score">The sum of all that is wrong or laborious; the lower the better.</param>
internal sealed record Arrangement(
    IReadOnlyList<Draft> Drafts,
    double Excess,
    double OffMiddle,
    double Score
);
