using CsCheck;
using Heapwright.Core.Amounts;
using Heapwright.Core.Bins;
using Heapwright.Core.BuildPlans;
using Heapwright.Core.Mixtures;
using UnitsNet;
using static Heapwright.Core.Tests.BuildPlans.Garden;

namespace Heapwright.Core.Tests.BuildPlans;

/// <summary>What holds for every plan, whatever is built.</summary>
public class BuildPlanBalanceTests
{
    private static readonly Gen<UnitSize> GenUnit = OneOf(
        Barrow,
        Bucket,
        Bag,
        Bale,
        Litre,
        Kilogram
    );

    private static readonly Gen<Ingredient> GenIngredient = Gen.Select(
        OneOf([.. All]),
        GenUnit,
        Gen.Int[0, 12],
        OneOf(0.0, 0.25, 0.5, 0.3),
        (material, unit, whole, part) =>
            Of(material, (whole + part) * (unit.WholeByDefault ? 1 : 30), unit)
    );

    private static readonly Gen<Bin> GenBin = Gen.Select(
        Gen.Int[0, 3],
        Gen.Double[0.3, 3],
        Gen.Double[0.3, 3],
        Gen.Double[0.3, 1.6],
        (shape, a, b, h) =>
            shape switch
            {
                0 => Box(a, b, h),
                1 => Bin.Ring(Length.FromMeters(a), Length.FromMeters(h)),
                2 => Bin.Cone(Length.FromMeters(a), Length.FromMeters(h)),
                _ => Bin.Windrow(
                    Length.FromMeters(a + 1),
                    Length.FromMeters(b),
                    Length.FromMeters(h)
                ),
            }
    );

    private static readonly Gen<BuildPlan> GenPlan = Gen.Select(
            GenIngredient.Array[1, 8].Where(all => all.Any(i => i.Amount.Typical > 0)),
            GenBin,
            Gen.Double[0, 200],
            (all, bin, water) => (all, bin, water)
        )
        .Select(x => Build(x.bin, x.water, x.all));

    [Fact]
    public void Amounts_AnyPlan_AddUpToWhatWasAsked() =>
        GenPlan.Sample(
            plan =>
            {
                foreach (var ingredient in plan.Question.Ingredients)
                {
                    var laid = plan
                        .Layers.SelectMany(l => l.Parts)
                        .Where(p => ReferenceEquals(p.Ingredient, ingredient))
                        .Sum(p => p.Amount);
                    Assert.Equal(ingredient.Amount.Typical, laid, 1e-9 * (1 + laid));
                }
            },
            iter: 60
        );

    [Fact]
    public void Amounts_TooMuchForTheBin_AreLaidOrLeftOver() =>
        Gen.Select(GenIngredient.Array[1, 5], Gen.Double[0.3, 0.6])
            .Where((all, _) => all.Any(i => i.Amount.Typical > 0))
            .Sample(
                (all, side) =>
                {
                    var plan = Build(Box(side, side, side), 10, all);
                    foreach (var name in all.Select(i => (i.Name, i.Unit)).Distinct())
                    {
                        bool Same(LayerPart p) => (p.Ingredient.Name, p.Ingredient.Unit) == name;
                        var asked = all.Where(i => (i.Name, i.Unit) == name)
                            .Sum(i => i.Amount.Typical);
                        var found =
                            plan.Layers.SelectMany(l => l.Parts).Where(Same).Sum(p => p.Amount)
                            + plan.LeftOver.Where(Same).Sum(p => p.Amount);
                        Assert.Equal(asked, found, 1e-9 * (1 + asked));
                    }

                    Assert.True(plan.Height.Meters <= side + 1e-9);
                },
                iter: 60
            );

    [Fact]
    public void VolumesAndWater_AnyPlan_AddUpToHeapAndTotal() =>
        GenPlan.Sample(
            plan =>
            {
                var thick = plan.Layers.Sum(l => l.Thickness.Meters);
                Assert.Equal(plan.Height.Meters, thick, 1e-9);
                var loose = plan.Layers.SelectMany(l => l.Parts).Sum(p => p.Loose.Liters);
                Assert.Equal(
                    plan.Outline.Volume.Liters,
                    loose * plan.BuiltFactor,
                    1e-6 * (1 + loose)
                );
                Assert.Equal(plan.Water.Liters, plan.Layers.Sum(l => l.Water.Liters), 1e-9);
                Assert.All(
                    plan.Layers,
                    l =>
                    {
                        Assert.NotEmpty(l.Parts);
                        Assert.True(l.Water.Liters >= 0, "water");
                        Assert.True(l.Thickness.Meters > 0, "thickness");
                        Assert.All(l.Parts, p => Assert.True(p.Amount > 0, "amount"));
                    }
                );
                Assert.Equal(
                    Enumerable.Range(1, plan.Layers.Length),
                    plan.Layers.Select(l => l.Number)
                );
            },
            iter: 60
        );

    [Fact]
    public void Layers_AnyPlan_AreNoMoreThanAPersonFollows() =>
        GenPlan.Sample(plan => Assert.InRange(plan.Layers.Length, 1, 16), iter: 150);

    /// <summary>Under 2 cm nobody can lay a layer; soil is dusted on, and the scraps are as thick as they are.</summary>
    [Fact]
    public void Layers_UsualBayWithoutScraps_AreThickEnoughToLay()
    {
        var barrows = Gen.Int[2, 12].Select(n => n / 2.0);
        Gen.Select(barrows, barrows, Gen.Int[0, 6], Gen.Int[1, 4], Gen.Int[0, 2])
            .Sample(
                (grass, straw, leaves, chips, coffee) =>
                {
                    var plan = Build(
                        Box(1.2, 1.2, 1.2),
                        60,
                        Of(Grass, grass, Barrow),
                        Of(Straw, straw, Barrow),
                        Of(Leaves, leaves, Bag),
                        Of(Chips, chips, Barrow),
                        Of(Coffee, coffee, Bucket)
                    );
                    Assert.All(
                        plan.Layers.Where(l => l.Role is not (LayerRole.Base or LayerRole.Cover)),
                        l => Assert.InRange(l.Thickness.Centimeters, 2 - 1e-9, 15)
                    );
                },
                iter: 100
            );
    }

    /// <summary>A bay and amounts as at home: every limit must hold, in people's numbers.</summary>
    [Fact]
    public void Limits_UsualBay_AllHold()
    {
        var barrows = Gen.Int[2, 12].Select(n => n / 2.0);
        Gen.Select(barrows, barrows, Gen.Int[1, 6], Gen.Int[0, 3], Gen.Int[0, 4])
            .Sample(
                (grass, straw, leaves, chips, scraps) =>
                {
                    var plan = Build(
                        Box(1.2, 1.2, 1.2),
                        60,
                        Of(Grass, Math.Min(grass, 4), Barrow),
                        Of(Straw, straw, Barrow),
                        Of(Leaves, leaves, Bag),
                        Of(Chips, chips, Barrow),
                        Of(Scraps, scraps, Bucket)
                    );
                    Assert.DoesNotContain(plan.Notes, n => n.Code == "buildplans.mix_first");
                    Assert.InRange(plan.Layers.Length, 4, 16);
                    foreach (var layer in plan.Layers.Where(l => l.Parts.Any(p => p.InMiddle)))
                    {
                        Assert.True(layer.Bottom >= plan.Height * 0.333, $"low: {layer.Bottom}");
                        Assert.True(layer.Top <= plan.Height * 0.667, $"high: {layer.Top}");
                    }

                    foreach (var layer in plan.Layers)
                    {
                        CheckLimits(layer);
                        Assert.All(
                            layer.Parts,
                            p => Assert.Equal(0, Math.IEEERemainder(p.Amount, 0.25), 9)
                        );
                    }
                },
                iter: 60
            );
    }

    private static Gen<T> OneOf<T>(params T[] these) =>
        Gen.Int[0, these.Length - 1].Select(i => these[i]);

    private static void CheckLimits(BuildLayer layer)
    {
        if (layer.Role is LayerRole.Base or LayerRole.Cover)
        {
            Assert.True(
                layer.Thickness.Centimeters <= 15 + 1e-9,
                $"{layer.Role} {layer.Thickness}"
            );
            return;
        }

        static double Limit(string name) =>
            name switch
            {
                "grass" => 5,
                "leaves" => 10,
                _ => 15,
            };
        if (layer.Role == LayerRole.Pair)
        {
            // Forked together nothing lies by itself: each stuff keeps its own limit within the layer.
            var loose = layer.Parts.Sum(p => p.Loose.Liters);
            Assert.All(
                layer.Parts,
                p =>
                    Assert.True(
                        layer.Thickness.Centimeters * (p.Loose.Liters / loose)
                            <= Limit(p.Ingredient.Name) + 1e-9,
                        $"layer {layer.Number}: {p.Ingredient.Name} of {layer.Thickness}"
                    )
            );
        }

        var limit =
            layer.Role == LayerRole.Pair ? 15 : layer.Parts.Min(p => Limit(p.Ingredient.Name));
        Assert.True(
            layer.Thickness.Centimeters <= limit + 1e-9,
            $"layer {layer.Number}: {layer.Thickness} of at most {limit}"
        );
    }
}
