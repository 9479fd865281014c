using UnitsNet;

namespace Heapwright.Core.Readings;

/// <summary>A temperature that was read off a probe in the heap.</summary>
public sealed record TemperatureEntry : DiaryEntry
{
    /// <summary>What was read; −273.15 to 2000 °C, since a wrong value is kept too.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is outside its range, or no number.</exception>
    public required Temperature Temperature
    {
        get;
        init
        {
            EntryLimits.Within(
                value.DegreesCelsius,
                EntryLimits.ColdestC,
                EntryLimits.HottestC,
                nameof(Temperature)
            );
            field = value;
        }
    }

    /// <summary>Whether it was given in °F.</summary>
    public bool GivenInFahrenheit { get; init; }

    /// <summary>Where the probe stood.</summary>
    public ProbeSpot Spot { get; init; } = ProbeSpot.Core;

    /// <summary>How deep its tip was in the matter, from the nearest surface at that spot, 0 to 5 m; null if not noted.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is outside its range.</exception>
    public Length? Depth
    {
        get;
        init
        {
            if (value is { } depth)
            {
                EntryLimits.Within(depth.Centimeters, 0, EntryLimits.DeepestCm, nameof(Depth));
            }

            field = value;
        }
    }

    /// <summary>The air beside the heap at that time; null if not noted.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is below −100 or above 100 °C.</exception>
    public Temperature? Air
    {
        get;
        init
        {
            if (value is { } air)
            {
                EntryLimits.Within(air.DegreesCelsius, -100, 100, nameof(Air));
            }

            field = value;
        }
    }

    /// <summary>What it was read with, in the person's words; empty if not noted.</summary>
    /// <exception cref="ArgumentOutOfRangeException">It is too long.</exception>
    public string Instrument
    {
        get;
        init =>
            field = EntryLimits.Text(value, 0, EntryLimits.LongestInstrument, nameof(Instrument));
    } = "";

    /// <summary>The reading as the models take it.</summary>
    /// <param name="day">Days since building.</param>
    public ProbeReading ToProbeReading(double day) => new(day, Temperature, Spot, Depth);
}
