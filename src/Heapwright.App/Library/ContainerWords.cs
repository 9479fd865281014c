using System.Collections.Frozen;
using System.Collections.Immutable;

namespace Heapwright.App.Library;

/// <summary>What the usual containers are called, by their id in questions.</summary>
public static class ContainerWords
{
    private static readonly Lazy<FrozenDictionary<string, (string One, string Many)>> Shipped = new(
        Read
    );

    /// <summary>The ids, in the order of data/containers.csv: the commonest first.</summary>
    public static ImmutableArray<string> Ids { get; } = [.. Rows().Select(r => r.Id)];

    /// <summary>The name of one, such as <c>small bale</c>; the id itself where it is no usual container.</summary>
    /// <param name="id">The id.</param>
    public static string One(string id) =>
        Shipped.Value.TryGetValue(id, out var words) ? words.One : id;

    /// <summary>The name of several.</summary>
    /// <param name="id">The id.</param>
    public static string Many(string id) =>
        Shipped.Value.TryGetValue(id, out var words) ? words.Many : id;

    private static FrozenDictionary<string, (string One, string Many)> Read() =>
        Rows().ToFrozenDictionary(r => r.Id, r => (r.One, r.Many), StringComparer.Ordinal);

    private static List<(string Id, string One, string Many)> Rows()
    {
        var rows = new List<(string, string, string)>();
        using var reader = DataFiles.Csv("containers.csv");
        foreach (var row in reader)
        {
            rows.Add((row["id"].ToString(), row["name"].ToString(), row["plural"].ToString()));
        }

        return rows;
    }
}
