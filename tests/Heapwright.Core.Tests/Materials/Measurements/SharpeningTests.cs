using Heapwright.Core.Materials;
using Heapwright.Core.Materials.Measurements;
using Heapwright.Core.Quantities;
using UnitsNet;

namespace Heapwright.Core.Tests.Materials.Measurements;

public class SharpeningTests
{
    private static readonly BucketWeighing Bucket = BucketWeighing.Of(
        Volume.FromLiters(20),
        Mass.FromKilograms(1),
        Mass.FromKilograms(3),
        FillingMethod.Loose
    );

    private static readonly DriedSample Dried = DriedSample.Of(
        Mass.FromGrams(0),
        Mass.FromGrams(100),
        Mass.FromGrams(70),
        DryingMethod.Oven
    );

    [Fact]
    public void Bucket_OfOwnStuff_NarrowsItsDensityAndNothingElse()
    {
        var stuff = Stuff.Of();
        var sharpened = Sharpening.Of(stuff, [Bucket]);
        var change = Assert.Single(sharpened.Changes);
        Assert.Equal(MaterialProperty.BulkDensity, change.Property);
        Assert.Equal(Spread.Of(50, 80, 130), change.Before);
        // 2 kg in 20 l are 100 kg/m³; the prior pulls a little toward 80.
        Assert.InRange(change.After.Typical, 94, 100);
        Assert.True(change.After.High - change.After.Low < 0.5 * (130 - 50));
        Assert.Equal(change.After, sharpened.Material.Properties[MaterialProperty.BulkDensity]);
        Assert.Equal(
            stuff.Properties[MaterialProperty.Moisture],
            sharpened.Material.Properties[MaterialProperty.Moisture]
        );
        // The material of the library is untouched.
        Assert.Equal(Spread.Of(50, 80, 130), stuff.Properties[MaterialProperty.BulkDensity]);
    }

    [Fact]
    public void Dried_WetterThanThought_DensityFollowsTheWater()
    {
        var sharpened = Sharpening.Of(Stuff.Of(), [Dried]);
        var moisture = sharpened.Material.Properties[MaterialProperty.Moisture]!.Value;
        Assert.InRange(moisture.Typical, 28, 30);
        Assert.InRange(moisture.High - moisture.Low, 3, 8);
        // The dry matter of a litre is kept: 80 x (100 - 20) = 6400.
        var density = sharpened.Material.Properties[MaterialProperty.BulkDensity]!.Value;
        Assert.InRange(density.Typical * (100 - moisture.Typical), 6399, 6401);
        Assert.Contains(sharpened.Remarks, r => r.Code is "materials.density_follows_water");
    }

    [Fact]
    public void DriedAndBucket_InEitherOrder_GiveTheSame()
    {
        var one = Sharpening.Of(Stuff.Of(), [Dried, Bucket]).Material.Properties;
        var other = Sharpening.Of(Stuff.Of(), [Bucket, Dried]).Material.Properties;
        Assert.Equal(one, other);
    }

    [Fact]
    public void Squeeze_FromDustToStreams_MoistureRises()
    {
        var stuff = Stuff.Of() with
        {
            Properties = Stuff.Usual.With(MaterialProperty.Moisture, Spread.Of(15, 50, 80)),
        };
        var last = 0.0;
        foreach (var word in Enum.GetValues<SqueezeWord>())
        {
            var after = Moisture(stuff, SqueezeTest.Of(word));
            Assert.True(after.Typical > last, $"{word}: {after}");
            last = after.Typical;
        }
    }

    // Common practice, no source: a handful like a wrung-out sponge is 50 to 60 % water.
    [Fact]
    public void Squeeze_Sponge_IsHalfToTwoThirdsWater()
    {
        var stuff = Stuff.Of() with
        {
            Properties = Stuff.Usual.With(MaterialProperty.Moisture, Spread.Of(15, 50, 80)),
        };
        Assert.InRange(Moisture(stuff, SqueezeTest.Of(SqueezeWord.Sponge)).Typical, 50, 62);
    }

    [Fact]
    public void Squeeze_FreshPlant_TellsLittleAndSaysSo()
    {
        var properties = Stuff.Usual.With(MaterialProperty.Moisture, Spread.Of(55, 75, 88));
        var living = Stuff.Of(freshness: "fresh") with { Properties = properties };
        var dead = Stuff.Of() with { Properties = properties };
        var sharpened = Sharpening.Of(living, [SqueezeTest.Of(SqueezeWord.Sponge)]);
        Assert.Contains(sharpened.Remarks, r => r.Code is "materials.squeeze_living");
        var toldLiving = sharpened.Material.Properties[MaterialProperty.Moisture]!.Value;
        var toldDead = Moisture(dead, SqueezeTest.Of(SqueezeWord.Sponge));
        Assert.True(toldLiving.High - toldLiving.Low > toldDead.High - toldDead.Low);
    }

    [Fact]
    public void Squeeze_Soil_IsRefusedWithTheReason()
    {
        var soil = Stuff.Of(kind: "soily") with
        {
            Properties = Stuff.Usual.With(MaterialProperty.Ash, Spread.Of(80, 90, 95)),
        };
        var problem = Assert.Throws<ArgumentException>(() =>
            Sharpening.Of(soil, [SqueezeTest.Of(SqueezeWord.Sponge)])
        );
        Assert.Contains("dry a sample", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Lab_FarFromTheLibrary_IsTakenAndRemarked()
    {
        var sharpened = Sharpening.Of(
            Stuff.Of(),
            [LabReport.Of(MaterialProperty.Nitrogen, 6, 0.1)]
        );
        Assert.Contains(sharpened.Remarks, r => r.Code is "materials.surprising_measurement");
        Assert.InRange(sharpened.Changes[0].After.Typical, 5.5, 6);
    }

    [Fact]
    public void Lab_WithinTheLibrary_IsNotRemarked() =>
        Assert.Empty(
            Sharpening.Of(Stuff.Of(), [LabReport.Of(MaterialProperty.Nitrogen, 1.2)]).Remarks
        );

    [Fact]
    public void Sharpened_Source_NamesTheMeasurement()
    {
        var sources = Sharpening.Of(Stuff.Of(), [Bucket]).Material.Sources;
        Assert.Contains(
            sources,
            s => s.Field is "bulk_density_kg_m3" && s.Source == Sharpening.OwnMeasurement
        );
    }

    [Fact]
    public void Bucket_NothingToStartFrom_IsRefused() =>
        Assert.Throws<ArgumentException>(() =>
            Sharpening.Of(Stuff.Of() with { Properties = MaterialProperties.None }, [Bucket])
        );

    private static Spread Moisture(Material material, IMeasurement measurement) =>
        Sharpening.Of(material, [measurement]).Material.Properties[
            MaterialProperty.Moisture
        ]!.Value;
}
