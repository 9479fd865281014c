using Heapwright.Core.Quantities;

namespace Heapwright.Core.Materials;

/// <summary>The known properties of a material, each a distribution; a property may be absent.</summary>
public sealed record MaterialProperties
{
    // A bare array, never changed: an immutable one of this kind is compiled anew at every start of the program.
    private readonly Func<MaterialProperties>? later;
    private Spread?[]? known;

    private MaterialProperties(Spread?[] values) => known = values;

    private MaterialProperties(Func<MaterialProperties> later) => this.later = later;

    /// <summary>Nothing known.</summary>
    public static MaterialProperties None { get; } = new(new Spread?[PropertyFacts.Count]);

    /// <summary>The distribution of a property, or null where nothing is known.</summary>
    /// <param name="property">The property.</param>
    public Spread? this[MaterialProperty property] => Values[(int)property];

    /// <summary>Properties that are read when they are first asked for: a library has hundreds, a question names a few.</summary>
    /// <param name="read">Reads them; the same each time.</param>
    public static MaterialProperties Later(Func<MaterialProperties> read)
    {
        ArgumentNullException.ThrowIfNull(read);
        return new MaterialProperties(read);
    }

    private Spread?[] Values => known ??= later!().Values;

    /// <summary>The properties that are known, in order.</summary>
    public IEnumerable<MaterialProperty> Known() =>
        PropertyFacts.All.Where(p => Values[(int)p] is not null);

    /// <summary>The same properties with one of them set.</summary>
    /// <param name="property">The property.</param>
    /// <param name="value">Its distribution, in the unit of the property, within its allowed range.</param>
    /// <exception cref="ArgumentOutOfRangeException">The distribution leaves the range allowed for the property.</exception>
    public MaterialProperties With(MaterialProperty property, Spread value)
    {
        PropertyFacts.Check(property, value);
        var changed = (Spread?[])Values.Clone();
        changed[(int)property] = value;
        return new MaterialProperties(changed);
    }

    /// <summary>These properties, with those of another record where this one has none.</summary>
    /// <param name="other">The record that fills the gaps.</param>
    public MaterialProperties FilledFrom(MaterialProperties other)
    {
        ArgumentNullException.ThrowIfNull(other);
        var filled = (Spread?[])Values.Clone();
        for (var i = 0; i < filled.Length; i++)
        {
            filled[i] ??= other.Values[i];
        }

        return new MaterialProperties(filled);
    }

    /// <summary>
    /// Carbon over nitrogen, from the percentiles of the two taken as independent; null unless both are known and
    /// nitrogen is above 0.
    /// </summary>
    /// <remarks>
    /// The ends are those of a ratio of two variables that are normal in two pieces on the logarithmic scale: the
    /// distances from the median add as root of the sum of squares.
    /// </remarks>
    public Spread? CarbonNitrogenRatio()
    {
        if (
            this[MaterialProperty.Carbon] is not { } c
            || this[MaterialProperty.Nitrogen] is not { Low: > 0 } n
        )
        {
            return null;
        }

        if (c.Low <= 0)
        {
            // Next to no organic carbon, as in a mineral fertiliser: the logarithm has no room, the plain ends serve.
            return Spread.Of(c.Low / n.High, c.Typical / n.Typical, c.High / n.Low);
        }

        var typical = c.Typical / n.Typical;
        var down = Math.Sqrt(
            Square(Math.Log(c.Typical / c.Low)) + Square(Math.Log(n.High / n.Typical))
        );
        var up = Math.Sqrt(
            Square(Math.Log(c.High / c.Typical)) + Square(Math.Log(n.Typical / n.Low))
        );
        return Spread.Of(typical * Math.Exp(-down), typical, typical * Math.Exp(up));
    }

    /// <summary>Whether two records hold the same distributions.</summary>
    /// <param name="other">The other record.</param>
    public bool Equals(MaterialProperties? other) =>
        other is not null && Values.AsSpan().SequenceEqual(other.Values);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = default(HashCode);
        foreach (var value in Values)
        {
            hash.Add(value);
        }

        return hash.ToHashCode();
    }

    private static double Square(double x) => x * x;
}
