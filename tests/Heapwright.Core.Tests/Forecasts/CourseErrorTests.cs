using Heapwright.Core.Forecasts;
using Heapwright.Core.Readings;

namespace Heapwright.Core.Tests.Forecasts;

/// <summary>A heap that goes its own way is forecast from its own readings; one that follows its members is not bent.</summary>
public class CourseErrorTests
{
    private const double Air = 12;
    private const double Ahead = 3; // d

    [Theory]
    [InlineData(-16)]
    [InlineData(-9)]
    [InlineData(12)]
    public void Ahead_OfAHeapThatStaysApartFromItsMembers_StartsFromItsReadings(double apart)
    {
        var (error, day) = Read(12, d => apart * Math.Min(1, d / 6.0), agreed: false);
        var (shift, _) = Middle(error, day + Ahead, 55);
        Assert.InRange(shift / apart, 0.8, 1.05);
    }

    [Fact]
    public void Ahead_OfAHeapLikeItsMembers_IsHardlyMovedAndNarrow()
    {
        var (error, day) = Read(12, d => d % 2 == 0 ? 0.8 : -0.8, agreed: false);
        var (shift, deviation) = Middle(error, day + Ahead, 55);
        var (_, far) = Middle(
            Read(12, d => d % 2 == 0 ? 9 : -9, agreed: true).Error,
            day + Ahead,
            55
        );
        Assert.InRange(shift, -1, 1);
        Assert.True(deviation < 4);
        Assert.True(far > deviation);
    }

    [Fact]
    public void Ahead_AfterAFall_TellsASlipFromReadingsThatAgree()
    {
        double Fallen(double d) => d >= 12 ? -18 : 0;
        var (alone, day) = Read(12, Fallen, agreed: false);
        var (agreed, _) = Read(12, Fallen, agreed: true);
        var (slip, _) = Middle(alone, day, 55);
        var (fall, _) = Middle(agreed, day, 55);
        Assert.True(fall < slip - 1);
        Assert.True(fall < -12);
    }

    [Fact]
    public void Ahead_WithoutReadings_MovesNothing()
    {
        var error = CourseError.Of([], []);
        var (weights, deviation) = error.Ahead(3, 40)[error.SizeOf(0.99)];
        Assert.Empty(weights);
        Assert.Equal(ErrorModel.Size(40), deviation, 9);
    }

    // Members that stand at 55 °C, and a heap that is apart from them.
    private static (CourseError Error, double Day) Read(
        int days,
        Func<double, double> apart,
        bool agreed
    )
    {
        DigestedReading[] readings =
        [
            .. Enumerable
                .Range(1, days)
                .Select(d => new DigestedReading(
                    d,
                    55 + apart(d),
                    2,
                    ProbeSpot.Core,
                    null,
                    55 + apart(d) - Air,
                    Agreed: agreed
                )),
        ];
        double[] members = [54, 54.5, 55, 55.5, 56];
        return (CourseError.Of(readings, [.. readings.Select(_ => members)]), days);
    }

    // Over the sizes as the members have them.
    private static (double Shift, double Deviation) Middle(
        CourseError error,
        double day,
        double celsius
    )
    {
        var ahead = error.Ahead(day, celsius - Air);
        const int Places = 100;
        var (shift, variance) = (0.0, 0.0);
        for (var i = 0; i < Places; i++)
        {
            var (weights, deviation) = ahead[error.SizeOf((i + 0.5) / Places)];
            shift += error.Shift(weights, 2) / Places;
            variance += deviation * deviation / Places;
        }

        return (shift, Math.Sqrt(variance));
    }
}
