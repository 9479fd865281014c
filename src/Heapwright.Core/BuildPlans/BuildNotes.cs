using System.Collections.Immutable;
using Heapwright.Core.Bins;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Reasons;
using UnitsNet;

namespace Heapwright.Core.BuildPlans;

/// <summary>What the builder should know about this very heap, and what was assumed.</summary>
internal static class BuildNotes
{
    /// <summary>Below this a heap loses heat faster than it makes it; common practice.</summary>
    private const double TooSmall = 300;

    /// <summary>Below this it heats for a few days at best; 1 m³ is the size that fact sheets print.</summary>
    private const double Small = 500;

    /// <summary>A heap lower than this lies like a blanket.</summary>
    private const double Flat = 60;

    /// <summary>More soil than this share of the volume smothers the heat.</summary>
    private const double MostSoil = 0.08;

    public static ImmutableArray<Reason> Of(
        PlanFacts facts,
        ImmutableArray<BuildLayer> layers,
        Length? margin
    )
    {
        var notes = ImmutableArray.CreateBuilder<Reason>();
        void Add(string code, params object[] values) =>
            notes.Add(Reason.Of("buildplans." + code, values));

        foreach (var stuff in facts.Stuffs)
        {
            if (stuff.Ingredient.Material?.Advice is "never" or "not_advised")
            {
                Add("advice_" + stuff.Ingredient.Material.Advice, stuff.Ingredient.Name);
            }
        }

        Size(facts, Add);
        Layering(facts, layers, Add);
        Scraps(facts, layers, margin, Add);
        Water(facts, Add);
        return notes.ToImmutable();
    }

    public static ImmutableArray<Reason> Assumptions(PlanFacts facts)
    {
        var said = ImmutableArray.CreateBuilder<Reason>();
        var bin = facts.Heaping.Bin;
        if (facts.Question.Bin is null)
        {
            said.Add(Reason.Of("buildplans.bin_assumed", bin.Width, bin.Height));
        }

        if (facts.Question.Water is null)
        {
            said.Add(
                Reason.Of(
                    "buildplans.water_assumed",
                    Volume.FromLiters(facts.Water),
                    facts.TargetMoisture
                )
            );
        }

        said.Add(Reason.Of("buildplans.typical"));
        if (facts.Water > 0)
        {
            said.Add(Reason.Of("buildplans.water_shared", facts.TargetMoisture));
        }

        said.Add(Reason.Of("buildplans.settling"));
        said.Add(
            Reason.Of(
                "buildplans.time",
                Mass.FromKilograms(BuildTime.KilogramsPerMinute),
                Volume.FromLiters(BuildTime.LitresPerMinute)
            )
        );
        return said.ToImmutable();
    }

    private static void Size(PlanFacts facts, Action<string, object[]> add)
    {
        var built = Volume.FromLiters(facts.Heaping.Built);
        var height = facts.Heaping.Height;
        if (built.Liters < TooSmall)
        {
            add("too_small", [built]);
        }
        else if (built.Liters < Small)
        {
            add("small", [built]);
        }

        var walls = facts.Heaping.Bin.Shape is BinShape.Box or BinShape.Ring;
        var side = Length.FromMeters(Math.Cbrt(built.CubicMeters));
        if (
            walls
            && facts.Arrangement.Drafts[0].Role != LayerRole.Alone
            && built.Liters >= TooSmall / 3
            && height.Centimeters < Flat
            && side > height * 1.3
        )
        {
            add("flat", [height, side]);
        }

        if (facts.Pressed < 0.999)
        {
            add("trodden", [height / facts.Pressed, height]);
        }

        if (!walls && height > facts.Heaping.Bin.Height * 1.02)
        {
            var outline = facts.Heaping.Outline(0);
            add("larger", [outline.Height, outline.Width]);
        }
    }

    private static void Layering(
        PlanFacts facts,
        ImmutableArray<BuildLayer> layers,
        Action<string, object[]> add
    )
    {
        var stuffs = facts.Stuffs;
        if (layers[0].Role == LayerRole.Alone)
        {
            add(
                stuffs[0].Class switch
                {
                    StuffClass.Grass => "alone_grass",
                    StuffClass.Soil => "alone_soil",
                    StuffClass.Kitchen => "alone_scraps",
                    StuffClass.Green or StuffClass.Sprinkle => "alone_green",
                    _ => "alone_brown",
                },
                [stuffs[0].Ingredient.Name]
            );
        }

        if (facts.Arrangement.Excess > 1 + 1e-9)
        {
            Thick(facts, layers, add);
        }

        if (layers[0].Role == LayerRole.Alone)
        {
            return;
        }

        if (layers[0].Role != LayerRole.Base)
        {
            add("no_base", []);
        }

        if (layers[^1].Role != LayerRole.Cover)
        {
            add(
                "no_cover",
                [
                    Length.FromCentimeters(LayerLimits.CoatLow),
                    Length.FromCentimeters(LayerLimits.CoatHigh),
                ]
            );
        }

        if (!stuffs.Any(s => s.IsGreen || s.Class is StuffClass.Kitchen or StuffClass.Sprinkle))
        {
            add("no_green", []);
        }

        if (GreenOnGreen(layers))
        {
            add("brown_short", []);
        }

        var soil = stuffs.Where(s => s.Class == StuffClass.Soil).Sum(s => s.Litres);
        if (soil > MostSoil * facts.Heaping.Loose)
        {
            add("much_soil", [Volume.FromLiters(soil)]);
        }
    }

    private static void Thick(
        PlanFacts facts,
        ImmutableArray<BuildLayer> layers,
        Action<string, object[]> add
    )
    {
        if (layers[0].Role == LayerRole.Alone)
        {
            add("alone_thick", [layers.Max(l => l.Thickness)]);
            return;
        }

        var floor = facts.Heaping.SlabLitres(1);
        var grass = facts.Arrangement.Drafts.Max(d =>
            d.Role is LayerRole.Base or LayerRole.Cover
                ? 0
                : d.Parts.Where(p => p.Stuff.Class == StuffClass.Grass)
                    .Sum(p => p.Amount * p.Stuff.PerUnit.LooseVolume) / floor
        );
        if (grass > LayerLimits.Grass * (1 + 1e-9))
        {
            add(
                "too_grassy",
                [
                    Length.FromCentimeters(grass),
                    Length.FromCentimeters(LayerLimits.Grass),
                    LayerLimits.MostLayers,
                ]
            );
        }
        else
        {
            add("mix_first", []);
        }
    }

    private static bool GreenOnGreen(ImmutableArray<BuildLayer> layers)
    {
        for (var i = 1; i < layers.Length; i++)
        {
            if (layers[i].Role == LayerRole.Green && layers[i - 1].Role == LayerRole.Green)
            {
                return true;
            }
        }

        return false;
    }

    private static void Scraps(
        PlanFacts facts,
        ImmutableArray<BuildLayer> layers,
        Length? margin,
        Action<string, object[]> add
    )
    {
        if (margin is not { } kept)
        {
            return;
        }

        var full = Length.FromCentimeters(LayerLimits.ScrapsMargin);
        var narrow = Length.FromMeters(
            Math.Min(facts.Heaping.Bin.Width.Meters, facts.Heaping.Bin.Length.Meters)
        );
        if (narrow < full * 2.2)
        {
            add("scraps_bin_narrow", [narrow, full]);
        }
        else if (kept < full - Length.FromCentimeters(0.5))
        {
            add("scraps_many", [kept]);
        }
        else
        {
            add("scraps", [full]);
        }

        var top = layers.Last(l => l.Parts.Any(p => p.InMiddle)).Top;
        var above = facts.Heaping.Height - top;
        if (above < full)
        {
            add("scraps_shallow", [above]);
        }
        else if (facts.Arrangement.OffMiddle > 0)
        {
            add("scraps_off_middle", []);
        }
    }

    private static void Water(PlanFacts facts, Action<string, object[]> add)
    {
        var mixture = facts.Mixture;
        var aim = Verdict.MoistureAim(mixture);
        var moisture = mixture.Typical.Moisture;
        if (moisture < aim.Low)
        {
            var more = ClosedForms.WaterForMoisture(
                mixture.Typical.Matter.WetMass,
                mixture.Typical.Matter.Water,
                facts.TargetMoisture
            );
            add("dry", [moisture, Volume.FromLiters(more), facts.TargetMoisture]);
        }
        else if (moisture > aim.High + 3 && facts.Water > 0)
        {
            add("water_last", [moisture]);
        }
        else if (moisture > aim.High + 3)
        {
            add("wet", [moisture]);
        }
    }
}
