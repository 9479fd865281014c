using NodaTime;

namespace Heapwright.App.Links;

/// <summary>A secret address that shows something to whoever has it.</summary>
/// <param name="Id">Which.</param>
/// <param name="Purpose">What it is for.</param>
/// <param name="HeapId">The heap it shows; null for the yard.</param>
/// <param name="MadeAt">Since when.</param>
/// <param name="ExpiresAt">Until when; null for as long as it is not taken back.</param>
/// <param name="RevokedAt">Since when it was taken back; null while it was not.</param>
public sealed record Link(
    Guid Id,
    LinkPurpose Purpose,
    Guid? HeapId,
    Instant MadeAt,
    Instant? ExpiresAt,
    Instant? RevokedAt
)
{
    /// <summary>Whether it still shows something.</summary>
    /// <param name="now">The present.</param>
    public bool IsGood(Instant now) => RevokedAt is null && !(ExpiresAt <= now);
}
