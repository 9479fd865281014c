namespace Heapwright.Core.Diagnosis;

/// <summary>Two facts that seldom go together.</summary>
/// <param name="One">A fact.</param>
/// <param name="Other">The other.</param>
/// <param name="Lift">How often both are met together, as a share of what each by itself would make of it.</param>
public sealed record FactPair(SignFact One, SignFact Other, double Lift);
