namespace Heapwright.Core.Hygiene;

/// <summary>The dose of heat that one probe shows.</summary>
/// <param name="Probe">The probe.</param>
/// <param name="Dose">The sum of dt/D; 1 is what the rule asks.</param>
/// <param name="Hours">The hours that were counted.</param>
/// <param name="GapHours">The hours that lie in gaps and were not counted.</param>
public sealed record ProbeDose(string Probe, double Dose, double Hours, double GapHours);
