namespace Heapwright.Core.Hygiene;

/// <summary>What a rule asks of its period of heat.</summary>
public sealed record HeatPeriod
{
    /// <summary>The temperatures.</summary>
    public required HeatBand Band { get; init; }

    /// <summary>How many days; null where the rule counts hours.</summary>
    public double? Days { get; init; }

    /// <summary>How many hours in one spell, where the rule counts hours.</summary>
    public double? Hours { get; init; }

    /// <summary>What the mean of these days must exceed, °C; null if nothing is asked of it.</summary>
    public double? MeanAboveCelsius { get; init; }

    /// <summary>Whether the days must follow one another.</summary>
    public DayOrder Order { get; init; }

    /// <summary>How many turns; 0 if none are asked for.</summary>
    public int Turns { get; init; }

    /// <summary>How far apart the turns must be, days; 0 if nothing is said.</summary>
    public double TurnsApartDays { get; init; }

    /// <summary>Whether the turns must fall within the period; otherwise anywhere in the record.</summary>
    public bool TurnsInPeriod { get; init; } = true;
}
