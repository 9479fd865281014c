namespace Heapwright.Core.Hygiene;

/// <summary>A time without a break.</summary>
/// <param name="From">Its beginning.</param>
/// <param name="To">Its end.</param>
internal readonly record struct HeatPiece(LogMoment From, LogMoment To)
{
    public double Hours => To.Hours - From.Hours;
}
