namespace Heapwright.App.Library;

/// <summary>Reads from data/names/materials-de.csv what the materials of the library are called in German.</summary>
internal static class GermanNames
{
    private static readonly Lazy<Dictionary<string, GermanName>> Shipped = new(Read);

    /// <summary>The ids of all materials that have a German name.</summary>
    public static IEnumerable<string> Ids => Shipped.Value.Keys;

    /// <summary>What a material is called; null where it has no German name.</summary>
    /// <param name="id">The id of the material.</param>
    public static GermanName? Of(string id) => Shipped.Value.GetValueOrDefault(id);

    private static Dictionary<string, GermanName> Read() =>
        DataFiles
            .Csv("materials-de.csv")
            .ToDictionary(
                row => row["id"],
                row => new GermanName(row["name"], row.List("also_called"), row["note"]),
                StringComparer.Ordinal
            );
}
