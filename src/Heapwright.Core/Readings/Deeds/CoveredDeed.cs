using Heapwright.Core.Simulation;

namespace Heapwright.Core.Readings.Deeds;

/// <summary>The cover was changed.</summary>
public sealed record CoveredDeed : HeapDeed
{
    /// <summary>The new cover, in the words of <see cref="Surroundings.Covers"/>.</summary>
    /// <exception cref="ArgumentException">It is not known.</exception>
    public required string Kind
    {
        get;
        init =>
            field = Surroundings.Covers.ContainsKey(value)
                ? value
                : throw new ArgumentException(
                    $"\"{value}\" is no cover; {string.Join(", ", Surroundings.Covers.Keys)} are",
                    nameof(value)
                );
    }
}
