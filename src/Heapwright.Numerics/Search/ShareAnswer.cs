namespace Heapwright.Numerics.Search;

/// <summary>How well given amounts do over the scenarios, with the free quantity set as well as it can be.</summary>
/// <param name="Share">Best share of scenarios whose rows all hold at one w, 0 to 1 (1 without scenarios). With nominal rows that cannot hold, w ranges over its whole interval.</param>
/// <param name="Free">That w: the middle of the best-covered stretch nearest to the preferred value; the preferred value, clipped, if no scenario can hold.</param>
/// <param name="FreeLow">Lower end of the stretch around <paramref name="Free"/> in which the wanted share holds (or, if it is not reached, in which the best share holds).</param>
/// <param name="FreeHigh">Upper end of that stretch.</param>
/// <param name="NominalHolds">True if some w satisfies all nominal rows.</param>
/// <param name="LimitsHold">True if all rows without uncertainty hold.</param>
/// <param name="Reached">True if the amounts are feasible: limits, nominal rows and the wanted share at one w, and not all zero.</param>
public readonly record struct ShareAnswer(
    double Share,
    double Free,
    double FreeLow,
    double FreeHigh,
    bool NominalHolds,
    bool LimitsHold,
    bool Reached
);
