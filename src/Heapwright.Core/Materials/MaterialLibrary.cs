using System.Collections.Frozen;
using System.Collections.Immutable;
using Heapwright.Core.Materials.Searching;

namespace Heapwright.Core.Materials;

/// <summary>All materials known, by id.</summary>
public sealed class MaterialLibrary
{
    private readonly FrozenDictionary<string, Material> byId;
    private readonly Lazy<SearchIndex> index;

    /// <summary>A library of these materials.</summary>
    /// <param name="materials">The materials, in the order in which they are listed; every id once.</param>
    /// <exception cref="ArgumentException">An id occurs twice.</exception>
    public MaterialLibrary(IEnumerable<Material> materials)
    {
        All = [.. materials];
        byId = All.ToFrozenDictionary(m => m.Id, StringComparer.Ordinal);
        index = new Lazy<SearchIndex>(() => new SearchIndex(this));
    }

    /// <summary>All materials, in their own order.</summary>
    public ImmutableArray<Material> All { get; }

    /// <summary>The names taken apart for searching; made at the first search.</summary>
    internal SearchIndex Index => index.Value;

    /// <summary>The material with this id, or null.</summary>
    /// <param name="id">An id such as <c>wheat_straw</c>.</param>
    public Material? Find(string id) => byId.GetValueOrDefault(id);
}
