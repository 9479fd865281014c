using NodaTime;

namespace Heapwright.App.Diary;

/// <summary>Something, or somebody's phone, that may write: a probe with a radio, a phone, a script.</summary>
/// <param name="Id">Which.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Role">What it may do.</param>
/// <param name="MadeAt">Since when.</param>
/// <param name="Until">Until when; null for as long as it is not taken off.</param>
/// <param name="RevokedAt">Since when it may not any more; null while it may.</param>
public sealed record Device(
    Guid Id,
    string Name,
    DeviceRole Role,
    Instant MadeAt,
    Instant? Until,
    Instant? RevokedAt
)
{
    /// <summary>Whether it may write at a moment.</summary>
    /// <param name="now">The moment.</param>
    public bool MayWrite(Instant now) => RevokedAt is null && (Until is not { } end || now < end);
}
