using System.Collections.Immutable;
using NodaTime;

namespace Heapwright.App.Changes;

/// <summary>Something a person did, as the record keeps it. Acts are added, never changed, never taken out.</summary>
public sealed record Act
{
    /// <summary>Its place in the record, from 1 on; 0 before it is written.</summary>
    public long Number { get; init; }

    /// <summary>When it was done.</summary>
    public required Instant At { get; init; }

    /// <summary>The code of the sentence that says what was done.</summary>
    public required string What { get; init; }

    /// <summary>The values in that sentence.</summary>
    public ImmutableArray<string> Values { get; init; } = [];

    /// <summary>The act that this one takes back, if it does.</summary>
    public long? Undoes { get; init; }

    /// <summary>What changed.</summary>
    public required ImmutableArray<Change> Changes { get; init; }
}
