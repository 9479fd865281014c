using Heapwright.Core.FinishedCompost;
using UnitsNet;

namespace Heapwright.Core.Tests.FinishedCompost;

/// <summary>Ash as a tracer, plain geometry, oxides and units.</summary>
public class AmountTests
{
    // Identities of the mass balance: ash 10 % to 25 % is a loss of 60 % of the dry mass and 66.7 % of the organic matter.
    [Theory]
    [InlineData(10, 25, 60, 66.6667)]
    [InlineData(20, 40, 50, 62.5)]
    [InlineData(15, 15, 0, 0)]
    [InlineData(5, 50, 90, 94.7368)]
    [InlineData(50, 40, -25, -50)] // ash went down, which no heap can do
    public void AshTracer_BeforeAndAfter_GivesTheLosses(
        double before,
        double after,
        double dry,
        double organic
    )
    {
        Assert.Equal(dry, AshTracer.DryLossPercent(before, after), 1e-9);
        Assert.Equal(organic, AshTracer.OrganicLossPercent(before, after), 5e-5);
        Assert.Equal(1 - (dry / 100), AshTracer.DryShareLeft(before, after), 1e-9);
    }

    // 100 kg dry with 2 % N become 40 kg with 3.5 %: 2 kg become 1.4 kg, so 30 % is lost.
    [Fact]
    public void Loss_OfNitrogen_FollowsFromMassAndContent() =>
        Assert.Equal(30, AshTracer.LossPercent(0.4, 2, 3.5), 1e-9);

    // A printed table of coverage: 1 yd³ covers 324 ft² at 1 in and 108 ft² at 3 in. (Another page prints 120 ft² at
    // 3 in, which is wrong.)
    [Theory]
    [InlineData(1, 324)]
    [InlineData(2, 162)]
    [InlineData(3, 108)]
    public void Coverage_OfACubicYard_IsThatOfTheTable(double inches, double squareFeet)
    {
        var litres = Volume.FromCubicYards(1).Liters;
        var depth = Length.FromInches(inches).Centimeters;

        var area = Spreading.SquareMetres(litres, depth);

        Assert.Equal(squareFeet, Area.FromSquareMeters(area).SquareFeet, 1e-6);
        Assert.Equal(litres, Spreading.Litres(area, depth), 1e-6);
        Assert.Equal(depth, Spreading.Centimetres(litres, area), 1e-9);
    }

    // 27 ft by 12 ft is 324 ft², which is 30.1 m².
    [Fact]
    public void Coverage_InMetricUnits_IsTheSame() =>
        Assert.Equal(
            (Length.FromFeet(27) * Length.FromFeet(12)).SquareMeters,
            Spreading.SquareMetres(Volume.FromCubicFeet(27).Liters, 2.54),
            1e-9
        );

    // Molar masses: P 30.974, O 15.999, K 39.098; C 12.011.
    [Fact]
    public void Oxides_AreThoseOfTheMolarMasses()
    {
        // Printed to four places; 0.83015 is printed as 0.8301.
        Assert.Equal(2 * 30.974 / ((2 * 30.974) + (5 * 15.999)), Oxides.PhosphorusInP2O5, 1e-4);
        Assert.Equal(2 * 39.098 / ((2 * 39.098) + 15.999), Oxides.PotassiumInK2O, 1e-4);
        Assert.Equal((12.011 + (2 * 15.999)) / 12.011, Oxides.CarbonDioxidePerCarbon, 1e-9);
        Assert.Equal(2 * 15.999, Oxides.MilligramsPerMillimoleOxygen, 1e-9);
    }
}
