using Heapwright.Core.Simulation;

namespace Heapwright.Core.Tests.Simulation;

/// <summary>The curve through the year whose means over the months are those that were given.</summary>
public sealed class MonthlyMeansTests
{
    // Invented means of three climates: mild, harsh, south of the equator; and one month out of all bounds.
    public static TheoryData<double[]> Years =>
        Rows(
            [4, 4.5, 6.5, 9, 12, 15, 17, 17, 14.5, 11, 7, 4.5],
            [-18, -15, -6, 4, 12, 17, 20, 18, 12, 4, -5, -14],
            [22, 22, 20, 16, 12, 10, 9, 10, 13, 15, 18, 20],
            [0, 0, 0, 0, 0, 40, 0, 0, 0, 0, 0, 0]
        );

    [Theory]
    [MemberData(nameof(Years))]
    public void Curve_OverEachMonthOfAnyYear_HasTheMeanThatWasGiven(double[] means)
    {
        var curve = new MonthlyMeans([.. means]);
        foreach (var year in (int[])[2027, 2028, 2100])
        {
            for (var month = 1; month <= 12; month++)
            {
                // By days, each by Simpson's rule, which is exact for a parabola.
                var days = DateTime.DaysInMonth(year, month);
                var sum = 0.0;
                for (var day = 0; day < days; day++)
                {
                    double At(double d) => curve.At(month, Math.Min(1, d / days));
                    sum += (At(day) + (4 * At(day + 0.5)) + At(day + 1)) / 6;
                }

                Assert.Equal(means[month - 1], sum / days, 1e-9);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Years))]
    public void Curve_AtTheEdgesOfMonths_HasNeitherStepNorKink(double[] means)
    {
        var curve = new MonthlyMeans([.. means]);
        const double Step = 1e-4;
        for (var month = 1; month <= 12; month++)
        {
            var next = (month % 12) + 1;
            Assert.Equal(curve.At(month, 1), curve.At(next, 0), 1e-9);
            // One-sided slopes of second order, exact for a parabola but for rounding.
            var before =
                (
                    (3 * curve.At(month, 1))
                    - (4 * curve.At(month, 1 - Step))
                    + curve.At(month, 1 - (2 * Step))
                ) / (2 * Step);
            var after =
                ((4 * curve.At(next, Step)) - curve.At(next, 2 * Step) - (3 * curve.At(next, 0)))
                / (2 * Step);
            Assert.Equal(before, after, 1e-7);
        }
    }

    [Fact]
    public void Curve_OfEqualMeans_IsLevel()
    {
        var curve = new MonthlyMeans([.. Enumerable.Repeat(11.5, 12)]);

        Assert.All(
            Enumerable.Range(0, 121).Select(i => curve.At(1 + (i / 11 % 12), i % 11 / 10.0)),
            value => Assert.Equal(11.5, value, 1e-12)
        );
    }

    [Fact]
    public void Curve_OfAWave_LiesNearTheWave()
    {
        // Means of 10 − 8 cos(2πt/12) over months: the wave times sin(π/12)/(π/12) = 0.98862.
        var means = Enumerable
            .Range(0, 12)
            .Select(k => 10 - (8 * 0.98862 * Math.Cos(2 * Math.PI * (k + 0.5) / 12)));
        var curve = new MonthlyMeans([.. means]);

        for (var k = 0; k < 12; k++)
        {
            foreach (var s in (double[])[0, 0.3, 0.5, 0.9])
            {
                var wave = 10 - (8 * Math.Cos(2 * Math.PI * (k + s) / 12));
                Assert.Equal(wave, curve.At(k + 1, s), 0.02);
            }
        }
    }

    private static TheoryData<double[]> Rows(params double[][] rows)
    {
        var data = new TheoryData<double[]>();
        foreach (var row in rows)
        {
            data.Add(row);
        }

        return data;
    }

    [Fact]
    public void Means_NotTwelveOrNotFinite_AreRefused()
    {
        Assert.Throws<ArgumentException>(() => new MonthlyMeans([1, 2, 3]));
        Assert.Throws<ArgumentException>(() =>
            new MonthlyMeans([.. Enumerable.Repeat(double.NaN, 12)])
        );
        var level = new MonthlyMeans([.. new double[12]]);
        Assert.Throws<ArgumentOutOfRangeException>(() => level.At(13, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => level.At(1, 1.1));
    }
}
