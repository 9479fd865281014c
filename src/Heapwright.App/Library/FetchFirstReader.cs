using System.Collections.Immutable;
using Heapwright.Core.Materials;
using Heapwright.Core.Recipes;

namespace Heapwright.App.Library;

/// <summary>Reads from data/rules/fetch-first.csv what could be fetched to mend a shortfall.</summary>
public static class FetchFirstReader
{
    private static readonly Lazy<FetchFirst> Shipped = new(Read);

    /// <summary>What could be fetched; read once.</summary>
    public static FetchFirst Table => Shipped.Value;

    private static FetchFirst Read()
    {
        var all = new Dictionary<string, List<Material>>(StringComparer.Ordinal);
        foreach (var row in DataFiles.Csv("fetch-first.csv"))
        {
            var what = row["shortfall"];
            var id = row["material"];
            var material =
                LibraryReader.Library.Find(id)
                ?? throw new InvalidDataException("fetch-first.csv: unknown material " + id);
            if (!all.TryGetValue(what, out var list))
            {
                all[what] = list = [];
            }

            list.Add(material);
        }

        return new FetchFirst(
            all.ToImmutableDictionary(p => p.Key, p => p.Value.ToImmutableArray())
        );
    }
}
