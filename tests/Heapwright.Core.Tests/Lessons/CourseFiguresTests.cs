using Heapwright.Core.Lessons;

namespace Heapwright.Core.Tests.Lessons;

public class CourseFiguresTests
{
    private static readonly double[] Days = [1, 2, 4, 6, 7];

    // By hand: 45 to 65 passes 55 half way between day 1 and 2; 65 to 60 stays above for two days; 60 to 50 passes 55 half
    // way between day 4 and 6, so 0.5 + 2 + 1 days above; 50 to 30 passes 40 half way between day 6 and 7.
    [Theory]
    [InlineData(HeapFigure.Peak, 65)]
    [InlineData(HeapFigure.First55, 1.5)]
    [InlineData(HeapFigure.DaysAt55, 3.5)]
    [InlineData(HeapFigure.Below40, 6.5)]
    public void Of_AHeapThatHeatsAndCools_IsAsWorkedByHand(HeapFigure figure, double expected) =>
        Assert.Equal(expected, CourseFigures.Of(figure, Days, [45, 65, 60, 50, 30]), 1e-12);

    [Fact]
    public void Of_AHeapThatStaysHot_HasNotCooled() =>
        Assert.Equal(
            double.PositiveInfinity,
            CourseFigures.Of(HeapFigure.Below40, Days, [45, 65, 60, 50, 41])
        );

    [Fact]
    public void Of_AHeapThatNeverHeats_NeverPasses()
    {
        double[] cold = [20, 25, 30, 28, 25];
        Assert.Equal(double.PositiveInfinity, CourseFigures.Of(HeapFigure.First55, Days, cold));
        Assert.Equal(0, CourseFigures.Of(HeapFigure.DaysAt55, Days, cold));
        Assert.Equal(1, CourseFigures.Of(HeapFigure.Below40, Days, cold));
    }

    // On the very mark counts as there: at or above.
    [Fact]
    public void Of_ExactlyAtTheMark_IsThere()
    {
        Assert.Equal(4, CourseFigures.Of(HeapFigure.First55, Days, [40, 50, 55, 50, 45]), 1e-12);
        Assert.Equal(
            double.PositiveInfinity,
            CourseFigures.Of(HeapFigure.Below40, Days, [40, 50, 55, 50, 40])
        );
    }

    [Fact]
    public void Range_WithDaysThatDoNotCome_EndsOpen()
    {
        double[] values = [.. Enumerable.Repeat(3.0, 90), .. Enumerable.Repeat(double.NaN, 10)];
        var range = FigureRange.Of(values);

        Assert.Equal((3, 3, double.PositiveInfinity), (range.Low, range.Typical, range.High));
        Assert.Equal(0.9, range.Reached, 1e-12);
        Assert.Equal(LessonVerdict.Inside, range.Against(double.PositiveInfinity));
        Assert.Equal(LessonVerdict.Inside, range.Against(3));
        Assert.Equal(LessonVerdict.Lower, range.Against(2.99));
    }
}
