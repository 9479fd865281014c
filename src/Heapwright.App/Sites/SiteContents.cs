using System.Collections.Immutable;
using Heapwright.App.Library;
using Heapwright.App.Ports;
using Heapwright.Core.Amounts;
using Heapwright.Core.Materials;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Sites;

/// <summary>What a site has at one moment, with its own materials and containers in place beside the usual ones.</summary>
public sealed class SiteContents
{
    private readonly ImmutableDictionary<string, Material> own;

    private SiteContents(
        ImmutableArray<OwnContainer> containers,
        ImmutableArray<OwnMaterial> materials,
        ImmutableArray<Measurement> measurements,
        ImmutableArray<Bay> bays,
        ImmutableArray<StockEntry> stock,
        ImmutableArray<KeptLesson> lessons
    )
    {
        Lessons = lessons;
        OwnContainers = containers;
        OwnMaterials = materials;
        Measurements = measurements;
        Bays = bays;
        Stock = stock;
        own = materials.ToImmutableDictionary(
            m => MaterialKey.Own(m.Id),
            ToMaterial,
            StringComparer.Ordinal
        );
        Containers = containers.Aggregate(
            UsualContainers.Set,
            (set, c) =>
                set.With(UnitSize.OfVolume(c.Name, Spread.Exact(c.HoldsL), wholeByDefault: true))
        );
    }

    /// <summary>The containers with a size of the site's own.</summary>
    public ImmutableArray<OwnContainer> OwnContainers { get; }

    /// <summary>All containers: the site's before the usual ones.</summary>
    public ContainerSet Containers { get; }

    /// <summary>The materials of the site's own.</summary>
    public ImmutableArray<OwnMaterial> OwnMaterials { get; }

    /// <summary>What was measured here.</summary>
    public ImmutableArray<Measurement> Measurements { get; }

    /// <summary>The bays.</summary>
    public ImmutableArray<Bay> Bays { get; }

    /// <summary>What is at hand.</summary>
    public ImmutableArray<StockEntry> Stock { get; }

    /// <summary>What heaps taught.</summary>
    public ImmutableArray<KeptLesson> Lessons { get; }

    /// <summary>A site that has nothing yet but measures of its own.</summary>
    /// <param name="containers">The measures.</param>
    public static SiteContents Of(ImmutableArray<OwnContainer> containers) =>
        new(containers, [], [], [], [], []);

    /// <summary>Reads what a site has.</summary>
    /// <param name="store">Where it is kept.</param>
    /// <param name="cancel">Gives up.</param>
    public static async Task<SiteContents> Read(IItemStore store, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(store);
        return new SiteContents(
            await store.All<OwnContainer>(cancel),
            await store.All<OwnMaterial>(cancel),
            await store.All<Measurement>(cancel),
            await store.All<Bay>(cancel),
            await store.All<StockEntry>(cancel),
            await store.All<KeptLesson>(cancel)
        );
    }

    /// <summary>A material of the library or of the site's own; null where the key names neither.</summary>
    /// <param name="key">See <see cref="MaterialKey"/>.</param>
    public Material? Material(string key) =>
        own.GetValueOrDefault(key) ?? LibraryReader.Library.Find(key);

    private static Material ToMaterial(OwnMaterial item)
    {
        var properties = MaterialProperties.None;
        foreach (var (field, range) in item.Properties)
        {
            if (PropertyFacts.FromFieldName(field) is { } property)
            {
                properties = properties.With(property, range.ToSpread());
            }
        }

        return new Material
        {
            Id = MaterialKey.Own(item.Id),
            Name = item.Name,
            Group = GroupOf(item.Kind),
            Family = "own",
            Kind = item.Kind,
            State = item.Freshness,
            Freshness = item.Freshness,
            CountsAs = item.CountsAs,
            Particle = "medium",
            Properties = properties,
        };
    }

    // Pictures and aims go by the shelf a material stands on; stuff without a name stands beside what looks like it.
    private static string GroupOf(string kind) =>
        kind switch
        {
            "papery" => "paper",
            "manure" => "manure",
            "meal" => "meal",
            "soily" => "soil",
            "fruity" => "kitchen",
            "woody" => "woody",
            _ => "garden",
        };
}
