namespace Heapwright.Core.Hygiene;

/// <summary>A stretch of which a probe says nothing: longer than 36 hours, or with a calendar day left out.</summary>
/// <param name="Probe">The probe.</param>
/// <param name="From">Its reading before; the beginning of the record where there is none.</param>
/// <param name="To">Its reading after; the end of the record where there is none.</param>
/// <param name="MissingDays">Calendar days without a reading of it.</param>
public sealed record LogGap(string Probe, LogMoment From, LogMoment To, int MissingDays)
{
    /// <summary>Its length, hours.</summary>
    public double Hours => To.Hours - From.Hours;
}
