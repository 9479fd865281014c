using Heapwright.Core.Forecasts;
using Heapwright.Core.Reasons;

namespace Heapwright.Core.Lessons;

/// <summary>Whether the readings are enough for a figure.</summary>
internal static class ReadingGaps
{
    /// <summary>The least readings of the core that tell anything: an estimate of our own.</summary>
    public const int Least = 4;

    /// <summary>The longest time between readings over which a straight line is drawn, d: an estimate of our own.</summary>
    public const double Longest = 4;

    /// <summary>Why a figure cannot be told from readings; null where it can.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="readings">The readings of the core, in order of time.</param>
    public static Reason? Fault(HeapFigure figure, IReadOnlyList<DigestedReading> readings)
    {
        if (readings.Count < Least)
        {
            return Reason.Of("lessons.few_readings", readings.Count, Least);
        }

        if (figure == HeapFigure.First55 && readings[0].Day > Longest)
        {
            return Reason.Of("lessons.late_start", readings[0].Day);
        }

        if (figure == HeapFigure.Peak)
        {
            return null;
        }

        // Only where it was warm on one side does a gap hide anything.
        var before = (Day: 0.0, Warm: false);
        foreach (var reading in readings)
        {
            var warm = reading.Value >= CourseFigures.Cooled;
            if (reading.Day - before.Day > Longest && (warm || before.Warm))
            {
                return Reason.Of("lessons.gap", before.Day, reading.Day);
            }

            before = (reading.Day, warm);
        }

        return null;
    }
}
