namespace Heapwright.Core.Diagnosis;

/// <summary>What a row of readings says: the temperature now, and how it got there.</summary>
public static class HeatCourse
{
    private const double DialCelsius = 2;
    private const double ProperlyHot = 46; // °C; below it a heap never got going

    /// <summary>The facts of readings.</summary>
    /// <param name="model">The model.</param>
    /// <param name="readings">The readings, in the order of time.</param>
    /// <param name="airCelsius">The air, °C, where it is known.</param>
    public static IEnumerable<SignFact> Facts(
        SignModel model,
        IReadOnlyList<HeatTold> readings,
        double? airCelsius
    )
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(readings);
        if (readings.Count == 0)
        {
            yield break;
        }

        var core = readings.Where(r => r.Spot == "core").ToList();
        if (core.Count == 0)
        {
            yield return new WordFact(model.Field("readings.place"), "off_core", isAbsence: false);
        }

        var now = core.Count > 0 ? core[^1] : readings[^1];
        yield return new ReadingFact(
            model,
            now.Celsius,
            now.Spot,
            airCelsius,
            Math.Max(DialCelsius, now.ErrorCelsius)
        );
        // Away from the core the level says little, so only the core has a course.
        if (core.Count > 1)
        {
            yield return new ChoiceFact(model.Field("readings.trend"), Trend(core));
        }
    }

    /// <summary>How the temperature went: rising, fell, or flat and how warm.</summary>
    internal static string Trend(IReadOnlyList<HeatTold> course)
    {
        const double Step = 6; // °C, above what a dial and another spot make of the same heap
        var (first, last) = (course[0].Celsius, course[^1].Celsius);
        var highest = first;
        foreach (var reading in course)
        {
            highest = Math.Max(highest, reading.Celsius);
        }

        if (highest - last > Math.Max(Step, 0.12 * highest) && highest >= 38)
        {
            return highest < ProperlyHot ? "fell_low" : "fell";
        }

        if (last - first > Step && last >= highest - (Step / 2))
        {
            return "rising";
        }

        return last switch
        {
            < 38 => "flat_low",
            < 50 => "flat_warm",
            _ => "flat_hot",
        };
    }
}
