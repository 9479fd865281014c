using System.Collections.Immutable;
using Heapwright.Core.Materials.Searching;

namespace Heapwright.Core.Materials;

/// <summary>All materials known, by id.</summary>
public sealed class MaterialLibrary
{
    private readonly Dictionary<string, Material> byId;
    private readonly Lazy<SearchIndex> index;
    private readonly Lazy<SearchIndex>? elsewhere;

    /// <summary>A library of these materials.</summary>
    /// <param name="materials">The materials, in the order in which they are listed; every id once.</param>
    /// <param name="namesElsewhere">
    /// What a material is called in other languages, asked at the first search: found when searched for, never shown.
    /// </param>
    /// <exception cref="ArgumentException">An id occurs twice.</exception>
    public MaterialLibrary(
        IEnumerable<Material> materials,
        Func<Material, IEnumerable<string>>? namesElsewhere = null
    )
    {
        All = [.. materials];
        byId = All.ToDictionary(m => m.Id, StringComparer.Ordinal);
        index = new Lazy<SearchIndex>(() => SearchIndex.Of(this));
        elsewhere = namesElsewhere is null
            ? null
            : new Lazy<SearchIndex>(() => SearchIndex.Elsewhere(this, namesElsewhere));
    }

    /// <summary>All materials, in their own order.</summary>
    public ImmutableArray<Material> All { get; }

    /// <summary>The names taken apart for searching; made at the first search.</summary>
    internal SearchIndex Index => index.Value;

    /// <summary>The names in other languages, taken apart for searching; null where none are known.</summary>
    internal SearchIndex? IndexElsewhere => elsewhere?.Value;

    /// <summary>The material with this id, or null.</summary>
    /// <param name="id">An id such as <c>wheat_straw</c>.</param>
    public Material? Find(string id) => byId.GetValueOrDefault(id);
}
