using System.Collections;
using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace Heapwright.Core.Quantities;

/// <summary>A list that never changes and equals another one with the same items in the same order, so that records can hold it.</summary>
/// <typeparam name="T">What it holds.</typeparam>
[CollectionBuilder(typeof(EquatableList), nameof(EquatableList.Of))]
public sealed class EquatableList<T> : IReadOnlyList<T>, IEquatable<EquatableList<T>>
{
    private readonly ImmutableArray<T> items;

    internal EquatableList(ImmutableArray<T> items) => this.items = items;

    /// <inheritdoc/>
    public int Count => items.Length;

    /// <inheritdoc/>
    public T this[int index] => items[index];

    /// <inheritdoc/>
    public bool Equals(EquatableList<T>? other) =>
        other is not null && items.SequenceEqual(other.items);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as EquatableList<T>);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var item in items)
        {
            hash.Add(item);
        }

        return hash.ToHashCode();
    }

    /// <inheritdoc/>
    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)items).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}

/// <summary>Makes lists.</summary>
public static class EquatableList
{
    /// <summary>A list of these items.</summary>
    /// <typeparam name="T">What it holds.</typeparam>
    /// <param name="items">The items.</param>
    public static EquatableList<T> Of<T>(ReadOnlySpan<T> items) => new([.. items]);
}
