namespace Heapwright.Numerics.Search;

/// <summary>Amounts that come as close as a local search could get to keeping the nominal rows and the limits (not proven).</summary>
/// <param name="Amounts">The amounts, [variable].</param>
/// <param name="Free">The free quantity that goes with them.</param>
/// <param name="Violation">Sum of the scaled violations: each row relative to the sum of the magnitudes of its terms, each limit relative to the limit; 0 when all hold.</param>
/// <param name="RowViolations">Scaled violation of every row, [row], 0 to 1.</param>
/// <param name="LimitViolations">Scaled violation of every limit, [limit].</param>
/// <param name="Share">Share of scenarios whose rows all hold at <paramref name="Free"/>.</param>
/// <param name="Objectives">Values of the objectives, [objective].</param>
public sealed record NearestAnswer(
    double[] Amounts,
    double Free,
    double Violation,
    double[] RowViolations,
    double[] LimitViolations,
    double Share,
    double[] Objectives
);
