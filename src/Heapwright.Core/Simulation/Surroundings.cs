namespace Heapwright.Core.Simulation;

/// <summary>Walls and covers by name.</summary>
/// <remarks>
/// Resistances of timber and straw bales: published orders of magnitude (from memory); all else estimates of our own.
/// </remarks>
public static class Surroundings
{
    /// <summary>The walls by their word: bare, slatted, timber, straw_bale, none.</summary>
    public static IReadOnlyDictionary<string, Barrier> Walls { get; } =
        new Dictionary<string, Barrier>(StringComparer.Ordinal)
        {
            ["bare"] = new(0, 0.03, 0.03, 0),
            ["slatted"] = new(0.10, 0.4, 0.4, 0),
            ["timber"] = new(0.15, 0.03, 0.03, 0),
            ["straw_bale"] = new(2.5, 0.15, 0.2, 0),
            ["none"] = new(0, 1, 1, 0),
        };

    /// <summary>The covers by their word: none, breathable, lid, straw.</summary>
    public static IReadOnlyDictionary<string, Barrier> Covers { get; } =
        new Dictionary<string, Barrier>(StringComparer.Ordinal)
        {
            ["none"] = new(0, 1, 1, 0),
            ["breathable"] = new(0.05, 0.6, 0.5, 0.8),
            ["lid"] = new(0.10, 0.3, 0.3, 1),
            ["straw"] = new(0.8, 0.9, 0.4, 0.5),
        };
}
