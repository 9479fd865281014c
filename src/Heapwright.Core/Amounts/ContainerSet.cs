using System.Collections.Immutable;

namespace Heapwright.Core.Amounts;

/// <summary>The containers known in one question: the asker's own before the usual ones.</summary>
public sealed class ContainerSet
{
    private readonly ImmutableDictionary<string, UnitSize> containers;

    private ContainerSet(ImmutableDictionary<string, UnitSize> containers) =>
        this.containers = containers;

    /// <summary>The names of all containers, in alphabetical order.</summary>
    public IReadOnlyList<string> Names => [.. containers.Keys.Order(StringComparer.Ordinal)];

    /// <summary>A set of the usual containers.</summary>
    /// <param name="usual">The containers, each with its assumed size.</param>
    public static ContainerSet Of(IEnumerable<UnitSize> usual) =>
        new(usual.ToImmutableDictionary(c => c.Unit, c => c, StringComparer.Ordinal));

    /// <summary>This set with a container of the asker's own, in place of a usual one of the same name.</summary>
    /// <param name="own">The container.</param>
    public ContainerSet With(UnitSize own)
    {
        ArgumentNullException.ThrowIfNull(own);
        return new(containers.SetItem(own.Unit, own));
    }

    /// <summary>The size of a unit: a container of this set, or a unit of mass or volume; null if it is neither.</summary>
    /// <param name="unit">The name.</param>
    public UnitSize? Find(string unit) =>
        MeasureUnits.Find(unit) ?? containers.GetValueOrDefault(unit);
}
