using Heapwright.Core.Bins;
using Heapwright.Core.Mixtures;
using UnitsNet;

namespace Heapwright.Validation.Published;

/// <summary>Air space, lignin and geometry against published formulae and figures.</summary>
public class AirAndLigninTests
{
    // Van Ginkel et al. 1999; Richard et al. 2004 (formula from memory, values computed).
    [Theory]
    [InlineData(600, 60, 20, 50.1)]
    [InlineData(400, 60, 20, 66.7)]
    [InlineData(700, 55, 40, 44.6)]
    public void FreeAirSpace_ThreePhases_AsComputed(
        double density,
        double moisture,
        double ash,
        double expected
    ) =>
        Assert.Equal(
            expected,
            Ask.Mix(
                    $$"""
                    {"ingredients":[{"name":"of the example","amount":{"value":1,"unit":"m3"},"carbon_pct_db":40,"nitrogen_pct_db":1.5,
                      "moisture_pct_wb":{{moisture}},"bulk_density_kg_m3":{{density}},"ash_pct_db":{{ash}} }]}
                    """
                )
                .Json["free_air_space_pct"]
                .Typical(),
            0.05
        );

    // Chandler et al. 1980 (from memory): B = 0.83 − 0.028 X, clamped at 0 (zero at 29.64).
    [Theory]
    [InlineData(0, 0.83)]
    [InlineData(5, 0.69)]
    [InlineData(10, 0.55)]
    [InlineData(15, 0.41)]
    [InlineData(20, 0.27)]
    [InlineData(30, 0)]
    public void BiodegradableShare_AsChandler(double lignin, double expected) =>
        Assert.Equal(expected, MassBalance.BiodegradableShare(lignin, 0), 0.005);

    // X is lignin in % of volatile solids: 8 % of dry mass with 20 % ash is 10 % of volatile solids.
    [Fact]
    public void BiodegradableShare_WithAsh_CountsLigninOfVolatileSolids() =>
        Assert.Equal(0.55, MassBalance.BiodegradableShare(8, 20), 0.005);

    // Richard, Cornell, "Estimating carbon content" (printed): %C = (100 − ash)/1.8 is the upper end; 50 % is assumed here.
    [Theory]
    [InlineData(40, 20)]
    [InlineData(46, 8)]
    [InlineData(50, 2)]
    public void AssumedAsh_StaysBelowThePublishedCarbonFormula(double carbon, double ash)
    {
        Assert.Equal(ash, MixtureAssumptions.Ash(carbon), 0.5);
        Assert.True(carbon <= (100 - MixtureAssumptions.Ash(carbon)) / 1.8);
    }

    // Klickitat County WA (printed): 3 ft × 3 ft × 3 ft is one cubic yard (not "3 cubic feet", as one page has it).
    [Fact]
    public void Bin_ThreeFeetCubed_IsOneCubicYard()
    {
        var three = Length.FromFeet(3);
        Assert.Equal(1, Bin.Box(three, three, three).Volume.CubicYards, 1e-9);
        Assert.Equal(27, Bin.Box(three, three, three).Volume.CubicFeet, 1e-9);
    }

    // Computed: cone of radius 1.0 m and height 1.2 m is 1.257 m³; parabolic windrow 3 × 1.5 × 10 m is 30.0 m³.
    [Fact]
    public void Bin_ConeAndWindrow_AsComputed()
    {
        Assert.Equal(
            1.257,
            Bin.Cone(Length.FromMeters(2), Length.FromMeters(1.2)).Volume.CubicMeters,
            0.0005
        );
        Assert.Equal(
            30.0,
            Bin.Windrow(
                Length.FromMeters(10),
                Length.FromMeters(3),
                Length.FromMeters(1.5)
            ).Volume.CubicMeters,
            0.05
        );
    }
}
