using System.Collections.Immutable;
using System.Text.Json;
using Heapwright.App.Changes;
using NodaTime;

namespace Heapwright.App.Sites;

/// <summary>A build sheet: the layers of one heap, from the ground up, and which of them are done.</summary>
public sealed record SavedSheet : Item
{
    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>The bay it is built in, if it is one of the site's.</summary>
    public Guid? BayId { get; init; }

    /// <summary>The recipe it was made from, if it was kept.</summary>
    public Guid? RecipeId { get; init; }

    /// <summary>When it was made.</summary>
    public required Instant MadeAt { get; init; }

    /// <summary>The question, as the contract has it.</summary>
    public required JsonElement Question { get; init; }

    /// <summary>The answer, as the contract has it.</summary>
    public required JsonElement Answer { get; init; }

    /// <summary>The numbers of the layers that are done, in ascending order.</summary>
    public ImmutableArray<int> Ticked { get; init; } = [];

    /// <inheritdoc/>
    public override IEnumerable<Refusal> Faults() =>
        [
            .. Check.Words(Name, "name", 1, 100),
            .. Check.Object(Question, "question"),
            .. Check.Object(Answer, "answer"),
        ];
}
