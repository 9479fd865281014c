using Heapwright.Numerics.Sampling;

namespace Heapwright.Core.FinishedCompost;

/// <summary>Seeds sown in compost, or in its water, and beside them in something clean.</summary>
/// <param name="Test">In the compost.</param>
/// <param name="Control">In something clean; null where there was none.</param>
public sealed record SeedTest(SeedCount Test, SeedCount? Control)
{
    /// <summary>Germination, % of the control; null without a control, or where nothing came up in it.</summary>
    public double? GerminationPercent =>
        Control is { Germinated: > 0 } control ? 100 * Test.Percent / control.Percent : null;

    /// <summary>The length of the roots, % of the control; 0 where nothing came up; null where it is not known.</summary>
    public double? RootPercent =>
        Control?.RootMillimetres is > 0 and var control
            ? Test.Germinated == 0
                ? 0
                : Test.RootMillimetres is { } root
                    ? 100 * root / control
                    : null
            : null;

    /// <summary>
    /// The germination index: GI = G · L / 100 with G germination and L root length, both in % of the control; null
    /// where one of them is not known.
    /// </summary>
    /// <remarks>Source: Zucconi et al. 1981 (from memory).</remarks>
    public double? GerminationIndex => GerminationPercent * RootPercent / 100;

    /// <summary>Germination, % of the control, as other dishes of as many seeds might have given it.</summary>
    /// <param name="points">The sample set of the question.</param>
    /// <returns>Shape [point]; null where it is not known.</returns>
    public double[]? CountedGermination(SamplePoints points)
    {
        ArgumentNullException.ThrowIfNull(points);
        if (GerminationPercent is null)
        {
            return null;
        }

        var test = Shares(Test, points.Uniform("seeds in compost"));
        var control = Shares(Control!, points.Uniform("seeds in control"));
        for (var i = 0; i < test.Length; i++)
        {
            test[i] = 100 * test[i] / Math.Max(control[i], 0.01);
        }

        return test;
    }

    /// <summary>The germination index with the errors of counting and of measuring roots (a tenth of their length).</summary>
    /// <param name="points">The sample set of the question.</param>
    /// <returns>Shape [point]; null where it is not known.</returns>
    public double[]? CountedIndex(SamplePoints points)
    {
        if (GerminationIndex is null || CountedGermination(points) is not { } index)
        {
            return null;
        }

        var error = points.Uniform("length of roots");
        for (var i = 0; i < index.Length; i++)
        {
            var root = RootPercent!.Value * (1 + (0.1 * NormalDistribution.Quantile(error[i])));
            index[i] *= Math.Max(0, root) / 100;
        }

        return index;
    }

    // The share that would come up of ever so many seeds, given the count: Jeffreys' mean and deviation.
    private static double[] Shares(SeedCount count, double[] points)
    {
        var mean = (count.Germinated + 0.5) / (count.Sown + 1);
        var deviation = Math.Sqrt(mean * (1 - mean) / (count.Sown + 2));
        for (var i = 0; i < points.Length; i++)
        {
            points[i] = Math.Clamp(
                mean + (deviation * NormalDistribution.Quantile(points[i])),
                0,
                1
            );
        }

        return points;
    }
}
