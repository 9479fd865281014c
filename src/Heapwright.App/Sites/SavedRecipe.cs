using System.Text.Json;
using Heapwright.App.Changes;
using NodaTime;

namespace Heapwright.App.Sites;

/// <summary>A recipe that was kept: what was asked and what was answered, as they stood.</summary>
public sealed record SavedRecipe : Item
{
    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>When it was made.</summary>
    public required Instant MadeAt { get; init; }

    /// <summary>The question, as the contract has it.</summary>
    public required JsonElement Question { get; init; }

    /// <summary>The answer, as the contract has it.</summary>
    public required JsonElement Answer { get; init; }

    /// <inheritdoc/>
    public override IEnumerable<Refusal> Faults() =>
        [
            .. Check.Words(Name, "name", 1, 100),
            .. Check.Object(Question, "question"),
            .. Check.Object(Answer, "answer"),
        ];
}
