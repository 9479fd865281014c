using Heapwright.Core.Advice;
using Heapwright.Core.Forecasts;
using Heapwright.Numerics.Sampling;
using UnitsNet;

namespace Heapwright.Validation.Forecasts;

/// <summary>The same heap read once more with other errors of the dial gets the same advice.</summary>
public class AdviceStabilityTests
{
    private const int Rereadings = 4;

    /// <summary>Advice does not flip on the noise of readings.</summary>
    /// <param name="number">The twin.</param>
    [Theory]
    [InlineData(2)]
    [InlineData(6)]
    [InlineData(15)]
    public void Advice_ReadingsWithOtherErrors_IsTheSameInMostCases(int number)
    {
        var twin = new HeapTwin(number, TwinStructure.Same);
        var readings = twin.Read(twin.Live(9), Enumerable.Range(1, 8).Select(d => (double)d));
        var stream = new SplitMix64(SplitMix64.SeedFor((ulong)number, "read again"));
        var advised = new List<ActionKind>();
        for (var n = 0; n < Rereadings; n++)
        {
            var forecast = Forecaster.Run(
                new ForecastQuestion
                {
                    Heap = twin.Question(),
                    Readings =
                    [
                        .. readings.Select(r =>
                            r with
                            {
                                Temperature = Temperature.FromDegreesCelsius(
                                    r.Temperature.DegreesCelsius + (2 * (stream.NextUnit() - 0.5))
                                ),
                            }
                        ),
                    ],
                    FromDay = 8.1,
                    AheadDays = 1,
                },
                TestContext.Current.CancellationToken
            );
            advised.Add(
                Adviser
                    .Advise(
                        forecast,
                        AdviceAim.SafeHeat,
                        [],
                        TestContext.Current.CancellationToken
                    )[0]
                    .Action.Deed
            );
        }

        Assert.True(
            advised.GroupBy(a => a).Max(g => g.Count()) >= Rereadings - 1,
            string.Join(", ", advised)
        );
    }
}
