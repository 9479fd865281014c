namespace Heapwright.Core.FinishedCompost;

/// <summary>How far a batch goes at one depth.</summary>
/// <param name="Centimetres">cm.</param>
/// <param name="SquareMetres">m².</param>
public sealed record Coverage(double Centimetres, Sampled SquareMetres);
