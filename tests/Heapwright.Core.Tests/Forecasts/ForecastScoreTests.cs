using Heapwright.Core.Forecasts;

namespace Heapwright.Core.Tests.Forecasts;

public sealed class ForecastScoreTests
{
    private static readonly CourseDay Expected = new(5, 40, 45, 50, 55, 60);

    [Fact]
    public void Scores_TellLeadsApart_AndNothingOfTooFew()
    {
        // One day ahead: misses of 0, 2, 4, 7 and 15 K, so 4 in the middle; three in the half, four in the nine tenths.
        double[] read = [50, 52, 46, 43, 65];
        var scores = ForecastScore.Of([
            .. read.Select(r => new ForecastMiss(1, Expected, r)),
            .. read.Take(4).Select(r => new ForecastMiss(5, Expected, r)),
        ]);

        Assert.Equal(4, scores.Length);
        Assert.True(scores[0].CanTell);
        Assert.Equal(4, scores[0].MedianMissKelvins, 9);
        Assert.Equal(60, scores[0].HalfPercent, 9);
        Assert.Equal(80, scores[0].NineTenthsPercent, 9);
        Assert.Equal((0, 4, 0), (scores[1].Readings, scores[2].Readings, scores[3].Readings));
        Assert.False(scores[2].CanTell);
        Assert.True(double.IsNaN(scores[2].MedianMissKelvins));
    }

    [Fact]
    public void Scores_OfAnEvenNumber_HaveTheirMiddleBetweenTwo() =>
        Assert.Equal(
            3,
            ForecastScore
                .Of(
                    new double[] { 50, 51, 52, 54, 55, 60 }.Select(r => new ForecastMiss(
                        2,
                        Expected,
                        r
                    ))
                )[1]
                .MedianMissKelvins,
            9
        );

    [Fact]
    public void CourseDay_BetweenTwo_LiesOnStraightLines() =>
        Assert.Equal(
            new CourseDay(6, 35, 40, 45, 50, 55),
            CourseDay.Between(Expected, new CourseDay(7, 30, 35, 40, 45, 50), 6)
        );
}
