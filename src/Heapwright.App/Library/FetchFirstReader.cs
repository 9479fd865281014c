using System.Collections.Concurrent;
using System.Collections.Immutable;
using Heapwright.Core.Materials;
using Heapwright.Core.Recipes;

namespace Heapwright.App.Library;

/// <summary>Reads from data/rules/fetch-first.csv what could be fetched to mend a shortfall.</summary>
public static class FetchFirstReader
{
    private static readonly ConcurrentDictionary<MaterialLibrary, FetchFirst> Shipped = new();

    /// <summary>What could be fetched, its names in the language that is being read; read once.</summary>
    public static FetchFirst Table => Shipped.GetOrAdd(LibraryReader.Library, Read);

    private static FetchFirst Read(MaterialLibrary library)
    {
        var all = new Dictionary<string, List<Material>>(StringComparer.Ordinal);
        foreach (var row in DataFiles.Csv("fetch-first.csv"))
        {
            var what = row["shortfall"];
            var id = row["material"];
            var material =
                library.Find(id)
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
