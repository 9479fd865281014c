namespace Heapwright.Web.Showing;

/// <summary>One picture of the inside of a heap, for a day.</summary>
/// <param name="Day">Days since building.</param>
/// <param name="HeightMetres">How high it stands.</param>
/// <param name="Air">The air, °C.</param>
/// <param name="Index">The number of the picture.</param>
/// <param name="Words">What it shows, in words.</param>
public sealed record HeatFrame(
    double Day,
    double HeightMetres,
    double Air,
    int Index,
    string Words
);
