using System.Globalization;
using Heapwright.Core.Amounts;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Library;

/// <summary>Reads the usual containers from data/containers.csv.</summary>
public static class UsualContainers
{
    private static readonly Lazy<(
        ContainerSet Set,
        Dictionary<string, (string One, string Many)> Names
    )> Shipped = new(Read);

    /// <summary>The usual containers; read once.</summary>
    public static ContainerSet Set => Shipped.Value.Set;

    /// <summary>The name of a usual container for one and for several; null if it is none.</summary>
    /// <param name="id">The container.</param>
    public static (string One, string Many)? Name(string id) =>
        Shipped.Value.Names.TryGetValue(id, out var name) ? name : null;

    private static (ContainerSet, Dictionary<string, (string, string)>) Read()
    {
        var all = new List<UnitSize>();
        var names = new Dictionary<string, (string, string)>(StringComparer.Ordinal);
        foreach (var row in DataFiles.Csv("containers.csv"))
        {
            var litres = Spread.Of(
                double.Parse(row["low_l"], CultureInfo.InvariantCulture),
                double.Parse(row["typical_l"], CultureInfo.InvariantCulture),
                double.Parse(row["high_l"], CultureInfo.InvariantCulture)
            );
            names[row["id"]] = (row["name"], row["plural"]);
            all.Add(
                UnitSize.OfVolume(row["id"], litres, wholeByDefault: true) with
                {
                    IsAssumed = true,
                }
            );
        }

        return (ContainerSet.Of(all), names);
    }
}
