using Heapwright.Core.Quantities;

namespace Heapwright.Core.Amounts;

/// <summary>What one of a unit holds: a mass, or a loose volume.</summary>
public sealed record UnitSize
{
    private UnitSize(string unit, bool isMass, Spread size, bool wholeByDefault)
    {
        Unit = unit;
        IsMass = isMass;
        Size = size;
        WholeByDefault = wholeByDefault;
    }

    /// <summary>The name of the unit, as the asker wrote it.</summary>
    public string Unit { get; }

    /// <summary>Whether <see cref="Size"/> is a mass in kg; otherwise it is a loose volume in litres.</summary>
    public bool IsMass { get; }

    /// <summary>kg or litres in one of the unit.</summary>
    public Spread Size { get; }

    /// <summary>Whether only whole numbers of it are handled: true for containers.</summary>
    public bool WholeByDefault { get; }

    /// <summary>Whether the size is our assumption, not the asker's word.</summary>
    public bool IsAssumed { get; init; }

    /// <summary>A unit that holds a mass.</summary>
    /// <param name="unit">Its name.</param>
    /// <param name="kilograms">kg in one of it, above 0.</param>
    /// <param name="wholeByDefault">Whether only whole numbers of it are handled.</param>
    public static UnitSize OfMass(string unit, Spread kilograms, bool wholeByDefault) =>
        new(unit, isMass: true, Positive(kilograms), wholeByDefault);

    /// <summary>A unit that holds a loose volume.</summary>
    /// <param name="unit">Its name.</param>
    /// <param name="litres">Litres in one of it, above 0.</param>
    /// <param name="wholeByDefault">Whether only whole numbers of it are handled.</param>
    public static UnitSize OfVolume(string unit, Spread litres, bool wholeByDefault) =>
        new(unit, isMass: false, Positive(litres), wholeByDefault);

    private static Spread Positive(Spread size)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(size.Low, nameof(size));
        return size;
    }
}
