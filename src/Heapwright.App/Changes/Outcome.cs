using System.Collections.Immutable;

namespace Heapwright.App.Changes;

/// <summary>What became of a command: the act that was written, or why nothing was.</summary>
/// <param name="Act">The act; null where it was refused or nothing had to change.</param>
/// <param name="Refusals">Why it was refused; empty if it was not.</param>
/// <param name="ItemId">The thing it was about, if it was one.</param>
public sealed record Outcome(Act? Act, ImmutableArray<Refusal> Refusals, Guid? ItemId = null)
{
    /// <summary>Whether it was not refused.</summary>
    public bool IsDone => Refusals.IsEmpty;

    /// <summary>A refusal.</summary>
    /// <param name="refusals">Why.</param>
    public static Outcome Refused(params ReadOnlySpan<Refusal> refusals) =>
        new(null, [.. refusals]);
}
