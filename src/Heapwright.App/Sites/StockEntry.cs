using Heapwright.App.Changes;
using NodaTime;

namespace Heapwright.App.Sites;

/// <summary>Something at hand: a material, how much of it in the person's own measure, and since when.</summary>
public sealed record StockEntry : Item
{
    /// <summary>Which material: see <see cref="MaterialKey"/>.</summary>
    public required string Material { get; init; }

    /// <summary>The person's own words for it; never empty.</summary>
    public required string Name { get; init; }

    /// <summary>How many of <see cref="Unit"/>.</summary>
    public required double Amount { get; init; }

    /// <summary>A container of the site or a unit of mass or volume.</summary>
    public required string Unit { get; init; }

    /// <summary>The day it was cut, fetched or brought, in the site's zone.</summary>
    public required LocalDate Since { get; init; }

    /// <summary>A note; may be empty.</summary>
    public string Note { get; init; } = "";

    /// <summary>Who gave it; may be empty.</summary>
    public string Giver { get; init; } = "";

    /// <inheritdoc/>
    public override IEnumerable<Refusal> Faults()
    {
        IEnumerable<Refusal> faults =
        [
            .. Check.Words(Material, "material", 1, 80),
            .. Check.Words(Name, "name", 1, 100),
            .. Check.Words(Unit, "unit", 1, 40),
            .. Check.Words(Note, "note", 0, 500),
            .. Check.Words(Giver, "giver", 0, 100),
        ];
        return Check.Between(Amount, "amount", 0, 1_000_000) is { } amount
            ? faults.Append(amount)
            : faults;
    }
}
