using Heapwright.Web.Drawings;

namespace Heapwright.Web.Tests;

/// <summary>The warmth between the middles of zones, as it is drawn.</summary>
public sealed class HeatFieldTests
{
    private static readonly double[] Centres = [0.33, 0.66, 0.9];
    private static readonly double[] Edges = [0, 0.25, 0.78, 1];

    // Ring by layer, from the middle on the ground: a hot core, cooler to every side.
    private static readonly double[,] Celsius =
    {
        { 45, 62, 50 },
        { 40, 55, 44 },
        { 28, 35, 30 },
    };

    private static HeatField Field(double air = 15) =>
        new(Centres, Edges, (ring, layer) => Celsius[ring, layer], air);

    [Fact]
    public void Field_BetweenZones_NeverOvershoots()
    {
        var field = Field();

        Assert.Equal(62, field.Hottest, 0.2);
        Assert.InRange(field.Coldest, 15, 28);
    }

    [Fact]
    public void Lines_OfALevel_GoRoundTheHotPartAlikeOnBothSides()
    {
        var loops = Field().Around(50).ToList();

        var loop = Assert.Single(loops);
        Assert.Equal(loop[0], loop[^1]);
        Assert.Equal(loop.Max(p => p.Across), -loop.Min(p => p.Across), 1e-9);
        // 50 lies between the middles of the rings at 0.66 (55) and 0.9 (35), and above the lowest layer (45 at most).
        Assert.InRange(loop.Max(p => p.Across), 0.66, 0.9);
        Assert.InRange(loop.Min(p => p.Up), 0.125, 0.5);
    }

    [Fact]
    public void Lines_OfALevelBelowAll_AreTheOutline()
    {
        var loop = Assert.Single(Field().Around(5).ToList());

        Assert.Equal((-1.0, 1.0), (loop.Min(p => p.Across), loop.Max(p => p.Across)));
        Assert.Equal((0.0, 1.0), (loop.Min(p => p.Up), loop.Max(p => p.Up)));
    }

    [Fact]
    public void Lines_OfALevelAboveAll_AreNone() => Assert.Empty(Field().Around(70));

    [Fact]
    public void Field_AllAlike_IsFlat()
    {
        var field = new HeatField(Centres, Edges, (_, _) => 15, 15);

        Assert.Equal(15, field.Hottest, 1e-9);
        Assert.Equal(15, field.Coldest, 1e-9);
    }

    [Fact]
    public void Polyline_StraightLine_NeedsItsEndsOnly() =>
        Assert.Equal(
            [(0.0, 0.0), (9.0, 9.0)],
            Polyline.Simple([.. Enumerable.Range(0, 10).Select(i => ((double)i, (double)i))])
        );
}
