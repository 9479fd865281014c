using System.Collections.Immutable;
using Heapwright.App.Changes;
using Heapwright.Core.Materials;

namespace Heapwright.App.Sites;

/// <summary>A material the library does not have, described by the person who has it.</summary>
public sealed record OwnMaterial : Item
{
    /// <summary>What it may count as.</summary>
    public static IReadOnlyList<string> Counts { get; } =
    ["green", "brown", "structure", "soil", "other"];

    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>green, brown, structure, soil or other.</summary>
    public required string CountsAs { get; init; }

    /// <summary>fresh, wilted, dry or aged; as seen and felt. Empty where it was not asked.</summary>
    public string Freshness { get; init; } = "";

    /// <summary>leafy, stemmy, woody, …; as seen and felt. Empty where it was not asked.</summary>
    public string Kind { get; init; } = "";

    /// <summary>What is taken to be known of it, by field name, each with its range.</summary>
    public ImmutableSortedDictionary<string, ValueRange> Properties { get; init; } =
        ImmutableSortedDictionary<string, ValueRange>.Empty;

    /// <summary>A note; may be empty.</summary>
    public string Note { get; init; } = "";

    /// <inheritdoc/>
    public override IEnumerable<Refusal> Faults()
    {
        foreach (
            var fault in Check.Words(Name, "name", 1, 100).Concat(Check.Words(Note, "note", 0, 500))
        )
        {
            yield return fault;
        }

        if (Check.Choice(CountsAs, "counts_as", Counts) is { } counts)
        {
            yield return counts;
        }

        foreach (var (field, range) in Properties)
        {
            if (PropertyFacts.FromFieldName(field) is not { } property)
            {
                yield return Refusal.Of(field, "sites.property_unknown", field);
                continue;
            }

            var (lowest, highest) = PropertyFacts.Allowed(property);
            if (range.Fault(field, lowest, highest) is { } fault)
            {
                yield return fault;
            }
        }
    }
}
