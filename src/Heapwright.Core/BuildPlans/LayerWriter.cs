using System.Collections.Immutable;
using Heapwright.Core.Reasons;
using UnitsNet;

namespace Heapwright.Core.BuildPlans;

/// <summary>Writes the arranged layers down, with water, preparation and reasons.</summary>
internal static class LayerWriter
{
    // Less water than this, in litres, is none.
    private const double Drop = 0.2;
    private const double DropShare = 0.01;

    private static readonly Length CoatLow = Length.FromCentimeters(LayerLimits.CoatLow);
    private static readonly Length CoatHigh = Length.FromCentimeters(LayerLimits.CoatHigh);

    public static ImmutableArray<BuildLayer> Write(PlanFacts facts)
    {
        var drafts = facts.Arrangement.Drafts;
        var levels = facts.Heaping.Levels(drafts);
        var water = WaterShares.Of(drafts, facts.Water, facts.TargetMoisture);
        var layers = ImmutableArray.CreateBuilder<BuildLayer>();
        for (var i = 0; i < drafts.Count; i++)
        {
            var draft = drafts[i];
            var (bottom, top) = levels[i];
            var role =
                draft.Role == LayerRole.Kitchen && draft.MiddleLitres <= 0
                    ? LayerRole.Brown
                    : draft.Role;
            layers.Add(
                new BuildLayer
                {
                    Number = i + 1,
                    Role = role,
                    Parts = [.. draft.Parts.Select(p => Part(p.Stuff, p.Amount, p.InMiddle))],
                    Bottom = bottom,
                    Thickness = top - bottom,
                    Water = Volume.FromLiters(water[i]),
                    Prepare = Prepare(draft, water[i]),
                    ForkWith = ForkWith(drafts, i),
                    Why = Why(draft, role, (top - bottom)),
                }
            );
        }

        return layers.ToImmutable();
    }

    public static LayerPart Part(Stuff stuff, double amount, bool inMiddle) =>
        new(
            stuff.Ingredient,
            amount,
            Volume.FromLiters(amount * stuff.PerUnit.LooseVolume),
            Mass.FromKilograms(amount * stuff.PerUnit.WetMass),
            inMiddle
        );

    // Forking scraps outwards would undo their place: the layer above only covers them. Browns that were joined with
    // the greens of another pair still lie below their own.
    private static int? ForkWith(IReadOnlyList<Draft> drafts, int i) =>
        drafts[i].Role == LayerRole.Green
        && i > 0
        && (
            drafts[i - 1].Role == LayerRole.Pair
            || drafts[i - 1].Role is LayerRole.Brown or LayerRole.Kitchen
                && drafts[i - 1].Pair == drafts[i].Pair
                && drafts[i - 1].MiddleLitres <= 0
        )
            ? i
            : null;

    private static ImmutableArray<string> Prepare(Draft draft, double water)
    {
        var codes = draft
            .Parts.SelectMany(p => p.Stuff.Prepare)
            .Where(c => c is not ("none" or "mix_at_once" or "thin_layers" or "bury_in_middle"))
            .Distinct(StringComparer.Ordinal);

        // What the plan gives no water, or a drop, needs no soaking.
        return
        [
            .. codes.Where(c =>
                c != "soak_first" || water >= Math.Max(Drop, DropShare * draft.Litres)
            ),
        ];
    }

    private static Reason Why(Draft draft, LayerRole role, Length thickness) =>
        role switch
        {
            LayerRole.Base when draft.Parts.All(p => p.Stuff.Class != StuffClass.Structure) =>
                Reason.Of("buildplans.why_base_brown"),
            LayerRole.Base when thickness.Centimeters < LayerLimits.CoatLow - 0.5 => Reason.Of(
                "buildplans.why_base_thin",
                CoatLow,
                CoatHigh
            ),
            LayerRole.Base => Reason.Of("buildplans.why_base"),
            LayerRole.Soil => Reason.Of("buildplans.why_soil"),
            LayerRole.Kitchen => Reason.Of("buildplans.why_kitchen"),
            LayerRole.Pair => Reason.Of("buildplans.why_pair"),
            LayerRole.Green when draft.Parts.Any(p => p.Stuff.Class == StuffClass.Grass) =>
                Reason.Of("buildplans.why_grass"),
            LayerRole.Green => Reason.Of("buildplans.why_green"),
            LayerRole.Brown when draft.Parts.All(p => p.Stuff.Class == StuffClass.Structure) =>
                Reason.Of("buildplans.why_structure"),
            LayerRole.Brown when draft.Parts.Any(p => p.Stuff.Class == StuffClass.Structure) =>
                Reason.Of("buildplans.why_brown_structure"),
            LayerRole.Brown => Reason.Of("buildplans.why_brown"),
            LayerRole.Cover when thickness.Centimeters < LayerLimits.CoatLow - 0.5 => Reason.Of(
                "buildplans.why_cover_thin",
                CoatLow,
                CoatHigh
            ),
            LayerRole.Cover => Reason.Of("buildplans.why_cover"),
            _ => Reason.Of("buildplans.why_alone"),
        };
}
