using System.Collections.Frozen;
using System.Collections.Immutable;

namespace Heapwright.Core.Materials;

/// <summary>All materials known, by id.</summary>
public sealed class MaterialLibrary
{
    private readonly FrozenDictionary<string, Material> byId;

    /// <summary>A library of these materials.</summary>
    /// <param name="materials">The materials, in the order in which they are listed; every id once.</param>
    /// <exception cref="ArgumentException">An id occurs twice.</exception>
    public MaterialLibrary(IEnumerable<Material> materials)
    {
        All = [.. materials];
        byId = All.ToFrozenDictionary(m => m.Id, StringComparer.Ordinal);
    }

    /// <summary>All materials, in their own order.</summary>
    public ImmutableArray<Material> All { get; }

    /// <summary>The material with this id, or null.</summary>
    /// <param name="id">An id such as <c>wheat_straw</c>.</param>
    public Material? Find(string id) => byId.GetValueOrDefault(id);
}
