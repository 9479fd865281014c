namespace Heapwright.Core.FinishedCompost;

/// <summary>Losses from the ash of a heap, which stays when the rest rots away.</summary>
/// <remarks>Ash must be neither washed out nor carried in with soil; equations by mass balance.</remarks>
public static class AshTracer
{
    /// <summary>Dry mass that is left, as a share of the start: d1/d0 = a0/a1.</summary>
    /// <param name="before">Ash at the start, % of dry mass, above 0.</param>
    /// <param name="after">Ash at the end, % of dry mass, above 0.</param>
    /// <returns>A share; above 1 where ash went down, which no heap can do.</returns>
    public static double DryShareLeft(double before, double after) => before / after;

    /// <summary>Dry mass lost: 100 (1 − a0/a1).</summary>
    /// <param name="before">Ash at the start, % of dry mass, above 0.</param>
    /// <param name="after">Ash at the end, % of dry mass, above 0.</param>
    /// <returns>% of the dry mass at the start.</returns>
    public static double DryLossPercent(double before, double after) =>
        100 * (after - before) / after;

    /// <summary>Organic matter lost: 100 (1 − a0 (100 − a1) / (a1 (100 − a0))).</summary>
    /// <param name="before">Ash at the start, % of dry mass, between 0 and 100.</param>
    /// <param name="after">Ash at the end, % of dry mass, above 0.</param>
    /// <returns>% of the organic matter at the start.</returns>
    public static double OrganicLossPercent(double before, double after) =>
        100 * (1 - (before * (100 - after) / (after * (100 - before))));

    /// <summary>Something lost that is a share of the dry mass, such as nitrogen: 100 (1 − (n1/n0) (a0/a1)).</summary>
    /// <param name="dryShareLeft">Dry mass left, a share of the start.</param>
    /// <param name="before">Its content at the start, % of dry mass, above 0.</param>
    /// <param name="after">Its content at the end, % of dry mass.</param>
    /// <returns>% of what there was; below 0 where there is more than there was.</returns>
    public static double LossPercent(double dryShareLeft, double before, double after) =>
        100 * (1 - (dryShareLeft * after / before));
}
