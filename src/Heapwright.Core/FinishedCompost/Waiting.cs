namespace Heapwright.Core.FinishedCompost;

/// <summary>
/// How long until a stage is reached: the present stage is drawn by its chances, how far it has gone evenly, and how
/// long each stage lasts from the figures.
/// </summary>
public static class Waiting
{
    private static readonly string[] Lasts = ["active_days", "cooling_days", "curing_days"];

    /// <summary>Days from now until a stage is reached.</summary>
    /// <param name="stage">The stage.</param>
    /// <param name="now">The chances of the stages now.</param>
    /// <param name="tables">How long stages last.</param>
    /// <param name="points">The sample set of the question.</param>
    /// <returns>Shape [point]; 0 where it is reached already.</returns>
    public static double[] Days(
        CompostStage stage,
        StageFinding now,
        FinishTables tables,
        SamplePoints points
    )
    {
        ArgumentNullException.ThrowIfNull(now);
        ArgumentNullException.ThrowIfNull(tables);
        ArgumentNullException.ThrowIfNull(points);
        var present = points.Uniform("present stage");
        var gone = points.Uniform("part of the stage that is over");
        var lasts = Lasts
            .Select(l => points.Draw(l, tables[l], Quantities.SpreadScale.Positive))
            .ToArray();
        var days = new double[present.Length];
        for (var i = 0; i < days.Length; i++)
        {
            var at = At(present[i], now);
            for (var s = at; s < (int)stage; s++)
            {
                days[i] += lasts[s][i] * (s == at ? 1 - gone[i] : 1);
            }
        }

        return days;
    }

    private static int At(double share, StageFinding now)
    {
        var sum = 0.0;
        for (var s = 0; s < now.Chances.Length; s++)
        {
            sum += now.Chances[s];
            if (share < sum)
            {
                return s;
            }
        }

        return now.Chances.Length - 1;
    }
}
