using System.Collections.Immutable;
using Heapwright.Core.Materials;
using Heapwright.Core.Quantities;
using Heapwright.Numerics.Sampling;

namespace Heapwright.Core.FinishedCompost;

/// <summary>A published scale: the classes of one quantity, with its source and the error of the test itself.</summary>
public sealed record CompostScale
{
    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>The field of the quantity, with its unit.</summary>
    public required string Quantity { get; init; }

    /// <summary>Its classes, which share out all values between them.</summary>
    public required ImmutableArray<ScaleClass> Classes { get; init; }

    /// <summary>Whether waiting can change the class.</summary>
    public required bool Mends { get; init; }

    /// <summary>The standard deviation of the test, in the unit of the quantity.</summary>
    public double Error { get; init; }

    /// <summary>The standard deviation of the test, % of the value.</summary>
    public double ErrorPercent { get; init; }

    /// <summary>Whether the print itself says to which class a boundary belongs; otherwise we chose.</summary>
    public required bool EqualityIsPrinted { get; init; }

    /// <summary>The key of its source in data/references.bib.</summary>
    public required string Source { get; init; }

    /// <summary>Where it stands, in words.</summary>
    public required string Citation { get; init; }

    /// <summary>How it came to be known.</summary>
    public required EvidenceKind Kind { get; init; }

    /// <summary>The class of a value.</summary>
    /// <param name="value">In the unit of the quantity.</param>
    public ScaleClass ClassOf(double value)
    {
        foreach (var one in Classes)
        {
            if (one.Holds(value))
            {
                return one;
            }
        }

        throw new ArgumentOutOfRangeException(
            nameof(value),
            value,
            $"no class of {Id} holds it; the classes must share out all values"
        );
    }

    /// <summary>The class of a value, and the chance of each class with the error of the test.</summary>
    /// <param name="value">The value as it was found.</param>
    /// <param name="points">The sample set of the question.</param>
    /// <param name="counted">Shape [point]: the value with the error of counting in it; null for the error of the scale.</param>
    public ScaleFinding Find(Spread value, SamplePoints points, double[]? counted = null)
    {
        ArgumentNullException.ThrowIfNull(points);
        var cases = counted ?? WithError(value, points);
        var chances = new double[Classes.Length];
        foreach (var one in cases)
        {
            for (var i = 0; i < chances.Length; i++)
            {
                if (Classes[i].Holds(one))
                {
                    chances[i] += 1.0 / cases.Length;
                    break;
                }
            }
        }

        return new ScaleFinding(this, value, ClassOf(value.Typical), [.. chances]);
    }

    private double[] WithError(Spread value, SamplePoints points)
    {
        var cases = points.Draw("value of " + Quantity, value, SpreadScale.Positive);
        var error = points.Uniform("error of " + Quantity);
        for (var i = 0; i < cases.Length; i++)
        {
            var deviation = Error + (ErrorPercent / 100 * cases[i]);
            cases[i] = Math.Max(0, cases[i] + (deviation * NormalDistribution.Quantile(error[i])));
        }

        return cases;
    }
}
