using System.Text.Json;
using Heapwright.App.Changes;
using NodaTime;

namespace Heapwright.App.Sites;

/// <summary>A measurement of a person's own stuff, which sharpens what is known of it here and nowhere else.</summary>
public sealed record Measurement : Item
{
    /// <summary>What can be measured.</summary>
    public static IReadOnlyList<string> Measures { get; } =
    ["bucket_weight", "oven_moisture", "squeeze", "lab"];

    /// <summary>Which material: see <see cref="MaterialKey"/>.</summary>
    public required string Material { get; init; }

    /// <summary>bucket_weight, oven_moisture, squeeze or lab.</summary>
    public required string Measure { get; init; }

    /// <summary>When it was measured.</summary>
    public required Instant At { get; init; }

    /// <summary>What was read off, field by field, each with its unit in the name.</summary>
    public required JsonElement Values { get; init; }

    /// <summary>A note; may be empty.</summary>
    public string Note { get; init; } = "";

    /// <inheritdoc/>
    public override IEnumerable<Refusal> Faults()
    {
        IEnumerable<Refusal> faults =
        [
            .. Check.Words(Material, "material", 1, 80),
            .. Check.Words(Note, "note", 0, 500),
        ];
        return Check.Choice(Measure, "measure", Measures) is { } measure
            ? faults.Append(measure)
            : faults;
    }
}
