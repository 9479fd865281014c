using NodaTime;

namespace Heapwright.App.Diary;

/// <summary>Something that may send entries: a probe with a radio, a phone, a script.</summary>
/// <param name="Id">Which.</param>
/// <param name="Name">What people call it.</param>
/// <param name="MadeAt">Since when.</param>
/// <param name="RevokedAt">Since when it may not any more; null while it may.</param>
public sealed record Device(Guid Id, string Name, Instant MadeAt, Instant? RevokedAt);
