namespace Heapwright.Web.Showing;

/// <summary>A part of a heap in a picture.</summary>
/// <param name="Look">Its pattern; see <see cref="MaterialLook"/>.</param>
/// <param name="Name">What it is.</param>
/// <param name="Litres">How much of it, loose.</param>
public sealed record HeapPart(string Look, string Name, double Litres);
