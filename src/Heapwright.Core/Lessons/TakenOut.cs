namespace Heapwright.Core.Lessons;

/// <summary>Compost that was taken out of a heap.</summary>
/// <param name="Litres">Litres, loose, as it was used.</param>
/// <param name="Day">The day of the last of it, days since building.</param>
/// <param name="IsAll">Whether it was all there was.</param>
public sealed record TakenOut(double Litres, double Day, bool IsAll);
