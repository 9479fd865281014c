using Heapwright.Core.Hygiene;

namespace Heapwright.Core.Tests.Hygiene;

/// <summary>
/// The times D of 131,700,000 / 10^(0.14 t) and 50,070,000 / 10^(0.14 t) days (15A NCAC 02T .1106, which restates 40 CFR
/// 503.32(a)(3)), worked out by hand to the digits shown.
/// </summary>
public class HeatDoseTests
{
    [Theory]
    [InlineData(50, 13.17, 0.005)]
    [InlineData(52, 6.91, 0.005)]
    [InlineData(55, 2.628, 0.0005)]
    [InlineData(60, 0.5243, 0.00005)]
    [InlineData(65, 0.1046, 0.00005)]
    [InlineData(70, 0.020875, 0.00001)]
    public void DaysAt_ATemperature_IsThatOfTheEquation(
        double celsius,
        double days,
        double printed
    ) => Assert.Equal(days, Logs.Formulas[0].DaysAt(celsius), printed);

    [Theory]
    [InlineData(50, 5.007)]
    [InlineData(55, 0.999)]
    [InlineData(60, 0.1993)]
    public void DaysAt_ThinMatter_IsThatOfItsEquation(double celsius, double days) =>
        Assert.Equal(days, Logs.Formulas[1].DaysAt(celsius), 0.0005);

    [Fact]
    public void Dose_OneTemperature_IsTimeOverD()
    {
        // 63.07 hours at 55 °C are D.
        var dose = Of(null, (0, 55), (24, 55), (48, 55), (63.07, 55));

        Assert.Equal(1, dose.Dose, 0.0001);
        Assert.Equal(63.07, dose.Hours, 1e-9);
    }

    [Fact]
    public void Dose_BetweenTwoReadings_TakesTheColder() =>
        // 12 hours between 55 and 60 °C count as 55: 0.5 / 2.628.
        Assert.Equal(0.1903, Of(null, (0, 55), (12, 60)).Dose, 0.0001);

    [Fact]
    public void Dose_Below50_AddsNothing()
    {
        Assert.Equal(0, Of(null, (0, 49.9), (24, 49.9)).Dose);
        Assert.Equal(0, Of(null, (0, 70), (24, 49.9), (48, 70)).Dose);
        Assert.Equal(1 / 13.17, Of(null, (0, 50), (24, 50)).Dose, 0.0001);
    }

    [Fact]
    public void Dose_OverAGap_IsNotCounted()
    {
        var dose = Of(null, (0, 60), (36.1, 60), (48.1, 60));

        Assert.Equal(0.5 / 0.5243, dose.Dose, 0.0005);
        Assert.Equal(36.1, dose.GapHours, 1e-9);
    }

    [Theory]
    [InlineData(null, 0.4564)]
    [InlineData(7.0, 0.4564)]
    [InlineData(6.9, 1.2004)]
    public void Dose_Solids_ChooseTheEquation(double? solids, double expected) =>
        // 1.1456 h at 65 °C: /24/0.10459 = 0.4564, and /24/0.03976 = 1.2004.
        Assert.Equal(expected, Of(solids, (0, 65), (1.1456, 65)).Dose, 0.002);

    [Fact]
    public void Dose_SpellShorterThan20Minutes_IsNotCovered()
    {
        Assert.Equal(0, Of(null, (0, 80), (0.33, 80)).Dose);
        Assert.True(Of(null, (0, 80), (0.34, 80)).Dose > 0);
    }

    [Fact]
    public void Dose_ThinMatterForLessThan30Minutes_TakesTheSlowerEquation()
    {
        // 0.4 h at 70 °C: /24/0.020875 = 0.798; from half an hour on D is 0.007936 d.
        Assert.Equal(0.798, Of(5, (0, 70), (0.4, 70)).Dose, 0.001);
        Assert.Equal(2.625, Of(5, (0, 70), (0.5, 70)).Dose, 0.005);
    }

    private static ProbeDose Of(double? solids, params (double Hours, double Celsius)[] readings) =>
        Assert.Single(
            HeatDose.Of(
                HeatLog.Of(
                    readings.Select(r => new LogReading(
                        r.Hours,
                        (int)(r.Hours / 24),
                        "core",
                        r.Celsius
                    )),
                    null
                ),
                Logs.Formulas,
                solids
            )
        );
}
