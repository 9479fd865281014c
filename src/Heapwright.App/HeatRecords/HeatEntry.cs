namespace Heapwright.App.HeatRecords;

/// <summary>One entry of a heat record: a reading, or a turn.</summary>
/// <param name="Time">When.</param>
/// <param name="Probe">The place of a reading; null for a turn.</param>
/// <param name="Celsius">The temperature of a reading, °C.</param>
/// <param name="Written">The temperature as it was written, such as <c>131 F</c>; empty for a turn.</param>
public sealed record HeatEntry(EntryTime Time, string? Probe, double Celsius, string Written)
{
    /// <summary>Whether it is a turn.</summary>
    public bool IsTurn => Probe is null;

    /// <summary>A turn.</summary>
    /// <param name="time">When.</param>
    public static HeatEntry Turn(EntryTime time) => new(time, null, double.NaN, "");
}
