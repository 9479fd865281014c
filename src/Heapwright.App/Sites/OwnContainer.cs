using Heapwright.App.Changes;
using Heapwright.Core.Amounts;

namespace Heapwright.App.Sites;

/// <summary>A container of this site with its own size, in place of the size assumed for its name.</summary>
public sealed record OwnContainer : Item
{
    /// <summary>Its name, used as the unit of amounts, such as <c>bucket</c> or <c>black tub</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Litres in one, as it is usually filled, heap included.</summary>
    public required double HoldsL { get; init; }

    /// <summary>Whether it is filled over the rim; said to people, the size includes it.</summary>
    public bool IsHeaped { get; init; }

    /// <summary>Whether the stuff is trodden or pressed in; said to people, the size includes it.</summary>
    public bool IsTrodden { get; init; }

    /// <inheritdoc/>
    public override IEnumerable<Refusal> Faults()
    {
        foreach (var fault in Check.Words(Name, "name", 1, 40))
        {
            yield return fault;
        }

        if (MeasureUnits.Find(Name) is not null)
        {
            yield return Refusal.Of("name", "sites.container_is_unit", Name);
        }

        if (Check.Between(HoldsL, "holds_l", 0.01, 100_000) is { } size)
        {
            yield return size;
        }
    }
}
