using Heapwright.Core.Materials;
using Heapwright.Core.Materials.Measurements;
using UnitsNet;

namespace Heapwright.Core.Tests.Materials.Measurements;

public class MeasurementTests
{
    // Source: Zabaleta, supplementary material on composting, after Cooperband 2002 (printed): bucket 20 l, 1 kg empty,
    // 10 kg full, 0.45 kg/l.
    [Fact]
    public void ZabaletaBucket_TwentyLitresNineKilograms_Is450PerCubicMetre() =>
        Assert.Equal(
            450,
            Bucket(20, 1, 10, FillingMethod.ThreeTaps).AsFilled.KilogramsPerCubicMeter,
            0.5
        );

    // Source: Trautmann and Richard, Cornell Composting, Moisture content (printed): container 4 g, 10 g of grass, 6.3 g
    // after drying, 77 %.
    [Fact]
    public void CornellMoisture_GrassSample_Is77Percent() =>
        Assert.Equal(77, Dried(4, 14, 6.3).Moisture.Percent, 1e-9);

    [Fact]
    public void Bucket_PackedFilling_MeansLessWhenLoose()
    {
        var stuff = Stuff.Of();
        var loose = Bucket(14, 1, 3, FillingMethod.Loose).On(stuff).Value;
        var taps = Bucket(14, 1, 3, FillingMethod.ThreeTaps).On(stuff).Value;
        var dropped = Bucket(14, 1, 3, FillingMethod.Dropped).On(stuff).Value;
        var refilled = Bucket(14, 1, 3, FillingMethod.DroppedAndRefilled).On(stuff).Value;
        Assert.True(loose > taps && taps > dropped && dropped > refilled);
    }

    [Fact]
    public void Bucket_MoreBuckets_TellMore()
    {
        var stuff = Stuff.Of(particle: "coarse");
        var one = Bucket(14, 1, 3, FillingMethod.Loose).On(stuff);
        var five = Bucket(14, 1, 3, FillingMethod.Loose, 5).On(stuff);
        Assert.Equal(one.Value, five.Value);
        Assert.True(five.StandardDeviation < 0.6 * one.StandardDeviation);
    }

    [Theory]
    [InlineData(0.5, 1, 3)]
    [InlineData(5000, 1, 3)]
    [InlineData(14, -1, 3)]
    [InlineData(14, 3, 3)]
    [InlineData(14, 3, 1)]
    [InlineData(14, 1, 1.01)]
    [InlineData(14, 1, 80)]
    public void Bucket_Impossible_IsRefused(double litres, double empty, double full) =>
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            Bucket(litres, empty, full, FillingMethod.Loose)
        );

    [Fact]
    public void Bucket_UnknownFillingOrCount_IsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Bucket(14, 1, 3, (FillingMethod)9));
        Assert.Throws<ArgumentOutOfRangeException>(() => Bucket(14, 1, 3, FillingMethod.Loose, 0));
    }

    [Theory]
    [InlineData(-1, 14, 6)]
    [InlineData(4, 6, 5)]
    [InlineData(4, 14, 3)]
    [InlineData(4, 14, 15)]
    public void DriedSample_Impossible_IsRefused(double container, double wet, double dry) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Dried(container, wet, dry));

    // An oven reading of a hundred grams is good to one or two points, a microwave to two or three.
    [Fact]
    public void DriedSample_Error_IsOneToThreePoints()
    {
        var oven = Dried(0, 100, 40).On(Stuff.Of()).StandardDeviation!.Value;
        var microwave = DriedSample
            .Of(Grams(0), Grams(100), Grams(40), DryingMethod.Microwave)
            .On(Stuff.Of())
            .StandardDeviation!.Value;
        Assert.InRange(oven, 1, 2);
        Assert.InRange(microwave, 2, 3);
    }

    [Fact]
    public void LabReport_OutsideTheRange_IsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            LabReport.Of(MaterialProperty.Moisture, 120)
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            LabReport.Of(MaterialProperty.Nitrogen, double.NaN)
        );
        Assert.Throws<ArgumentOutOfRangeException>(() =>
            LabReport.Of(MaterialProperty.Nitrogen, 2, 0)
        );
    }

    [Fact]
    public void Squeeze_UnknownWord_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => SqueezeTest.Of((SqueezeWord)7));

    [Theory]
    [InlineData("woody", "dry", "coarse", SqueezeClass.Coarse)]
    [InlineData("leafy", "dry", "medium", SqueezeClass.Leafy)]
    [InlineData("manure", "fresh", "medium", SqueezeClass.Fine)]
    [InlineData("papery", "dry", "fine", SqueezeClass.Fine)]
    [InlineData("leafy", "fresh", "fine", SqueezeClass.Living)]
    public void Squeeze_Class_FollowsTheMaterial(
        string kind,
        string freshness,
        string particle,
        SqueezeClass expected
    ) =>
        Assert.Equal(
            expected,
            SqueezeTest.ClassOf(Stuff.Of(kind: kind, freshness: freshness, particle: particle))
        );

    private static BucketWeighing Bucket(
        double litres,
        double empty,
        double full,
        FillingMethod filling,
        int buckets = 1
    ) =>
        BucketWeighing.Of(
            Volume.FromLiters(litres),
            Mass.FromKilograms(empty),
            Mass.FromKilograms(full),
            filling,
            buckets
        );

    private static DriedSample Dried(double container, double wet, double dry) =>
        DriedSample.Of(Grams(container), Grams(wet), Grams(dry), DryingMethod.Oven);

    private static Mass Grams(double grams) => Mass.FromGrams(grams);
}
