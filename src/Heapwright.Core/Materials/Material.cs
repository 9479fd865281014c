using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace Heapwright.Core.Materials;

/// <summary>A material people really have, in one state, with what is known of it and from where.</summary>
public sealed record Material
{
    /// <summary>The name by which files and questions refer to it, such as <c>wheat_straw</c>.</summary>
    public required string Id { get; init; }

    /// <summary>Its plain name.</summary>
    public required string Name { get; init; }

    /// <summary>Other words people use for it.</summary>
    public ImmutableArray<string> AlsoCalled { get; init; } = [];

    /// <summary>The shelf it stands on: garden, leaves, straw_hay, kitchen, manure, ….</summary>
    public required string Group { get; init; }

    /// <summary>The plant family or origin.</summary>
    public required string Family { get; init; }

    /// <summary>What it looks and feels like: leafy, stemmy, woody, fruity, seedy, papery, manure, meal or soily.</summary>
    public required string Kind { get; init; }

    /// <summary>fresh, wilted, dry, aged, bedded, chopped, ….</summary>
    public required string State { get; init; }

    /// <summary>fresh, wilted, dry or aged.</summary>
    public required string Freshness { get; init; }

    /// <summary>green, brown, structure, soil or other.</summary>
    public required string CountsAs { get; init; }

    /// <summary>coarse, medium or fine.</summary>
    public required string Particle { get; init; }

    /// <summary>Days until it spoils or loses its worth in store; null if it keeps.</summary>
    public double? SpoilsInDays { get; init; }

    /// <summary>What happens then: ferments, loses_nitrogen, gets_wet, moulds, dries_out; empty if it keeps.</summary>
    public string SpoilsHow { get; init; } = "";

    /// <summary>Codes of how to prepare it, such as <c>soak_first</c>.</summary>
    public ImmutableArray<string> Prepare { get; init; } = [];

    /// <summary>Codes of the cautions that belong to it, such as <c>raw_manure</c>.</summary>
    public ImmutableArray<string> Cautions { get; init; } = [];

    /// <summary>Codes of what to ask the giver, such as <c>sprays_on_hay</c>.</summary>
    public ImmutableArray<string> AskGiver { get; init; } = [];

    /// <summary>may, with_care, not_advised or never.</summary>
    public string Advice { get; init; } = "may";

    /// <summary>What else is worth knowing, in one sentence; may be empty.</summary>
    public string Note { get; init; } = "";

    /// <summary>What is known of it.</summary>
    public required MaterialProperties Properties { get; init; }

    /// <summary>Where each value comes from.</summary>
    public ImmutableArray<PropertySource> Sources
    {
        get => ImmutableCollectionsMarshal.AsImmutableArray(Told.Value);
        init => Told = new Lazy<PropertySource[]>([.. value]);
    }

    private Lazy<PropertySource[]> Told { get; init; } = new([]);

    /// <summary>The same material with sources that are read when they are first asked for.</summary>
    /// <param name="read">Reads them; the same each time.</param>
    public Material WithSources(Func<IEnumerable<PropertySource>> read) =>
        this with
        {
            Told = new Lazy<PropertySource[]>(() => [.. read()]),
        };
}
