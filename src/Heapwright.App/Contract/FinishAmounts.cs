using System.Text.Json.Nodes;
using Heapwright.App.Library;
using Heapwright.Core.FinishedCompost;
using Heapwright.Core.Materials;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Contract;

/// <summary>The amounts of an answer of <c>finish</c>: yield, nutrients, and where it goes.</summary>
internal static class FinishAmounts
{
    /// <summary>How much there is.</summary>
    public static JsonObject Yield(FinishTold told)
    {
        var (yield, nutrients) = (told.Answer.Yield, told.Answer.Nutrients);
        return new JsonObject
        {
            ["mass_kg"] = Of(yield.WetMass),
            ["dry_mass_kg"] = Of(yield.DryMass),
            ["volume_l"] = Of(yield.Volume),
            ["volume_m3"] = Of(yield.Volume?.Map(Cubic)),
            ["moisture_pct_wb"] = Of(yield.Moisture),
            ["bulk_density_kg_m3"] = Of(yield.BulkDensity),
            ["mass_pct_of_start"] = Of(yield.MassPercent),
            ["dry_mass_pct_of_start"] = Of(yield.DryShareLeft?.Map(s => 100 * s)),
            ["volume_pct_of_start"] = Of(yield.VolumePercent),
            ["dry_matter_loss_pct"] = Of(yield.DryLossPercent),
            ["organic_matter_loss_pct"] = Of(yield.OrganicLossPercent),
            ["carbon_loss_pct"] = Of(nutrients.CarbonLossPercent),
            ["nitrogen_loss_pct"] = Of(nutrients.NitrogenLossPercent),
            ["oversize_pct"] = Of(yield.Oversize),
            ["usable_mass_kg"] = Of(yield.UsableMass),
            ["usable_volume_l"] = Of(yield.UsableVolume),
            ["from"] = new JsonObject
            {
                ["mass"] = From(yield.WetMass),
                ["volume"] = From(yield.Volume),
                ["moisture"] = From(yield.Moisture),
                ["bulk_density"] = From(yield.BulkDensity),
                ["loss"] = From(yield.DryLossPercent),
            },
            ["doubts"] = Json.Of(yield.Doubts.Select(told.Assumptions.Measures.Say)),
        };
    }

    /// <summary>What is in it.</summary>
    public static JsonObject Nutrients(FinishTold told)
    {
        var n = told.Answer.Nutrients;
        var dry = told.Answer.Yield.DryMass;
        Sampled? Mass(Sampled percent) => dry?.With(percent, (d, p) => d * p / 100);
        var nitrogen = Mass(n.Nitrogen);
        var first = nitrogen?.With(n.FirstYearNitrogenPercent, (all, p) => all * p / 100);
        return new JsonObject
        {
            ["organic_matter_pct_db"] = Of(n.OrganicMatter),
            ["carbon_pct_db"] = Of(n.Carbon),
            ["nitrogen_pct_db"] = Of(n.Nitrogen),
            ["carbon_nitrogen_ratio"] = Of(n.Ratio),
            ["phosphorus_pct_db"] = Of(n.Phosphorus),
            ["p2o5_pct_db"] = Of(P2O5(n.Phosphorus)),
            ["potassium_pct_db"] = Of(n.Potassium),
            ["k2o_pct_db"] = Of(K2O(n.Potassium)),
            ["organic_matter_kg"] = Of(Mass(n.OrganicMatter)),
            ["carbon_kg"] = Of(Mass(n.Carbon)),
            ["nitrogen_kg"] = Of(nitrogen),
            ["phosphorus_kg"] = Of(Mass(n.Phosphorus)),
            ["p2o5_kg"] = Of(Mass(P2O5(n.Phosphorus))),
            ["potassium_kg"] = Of(Mass(n.Potassium)),
            ["k2o_kg"] = Of(Mass(K2O(n.Potassium))),
            ["ec_ds_m"] = told.Question.Measured.TryGetValue("ec_ds_m", out var salt)
                ? Json.Of(salt)
                : null,
            ["first_year_nitrogen_pct"] = Of(n.FirstYearNitrogenPercent),
            ["first_year_nitrogen_kg"] = Of(first),
            ["first_year"] = new JsonArray([
                .. FinishTableReader
                    .Tables.Figures.Values.Where(f =>
                        f.Id.StartsWith("first_year_", StringComparison.Ordinal)
                    )
                    .OrderBy(f => f.Id, StringComparer.Ordinal)
                    .Select(Share),
            ]),
            ["from"] = new JsonObject
            {
                ["organic_matter"] = From(n.OrganicMatter),
                ["carbon"] = From(n.Carbon),
                ["nitrogen"] = From(n.Nitrogen),
                ["phosphorus"] = From(n.Phosphorus),
                ["potassium"] = From(n.Potassium),
                ["carbon_nitrogen_ratio"] = From(n.Ratio),
                ["first_year_nitrogen"] = From(n.FirstYearNitrogenPercent),
            },
        };
    }

    /// <summary>Where it goes.</summary>
    public static JsonObject Apply(FinishTold told)
    {
        var answer = told.Answer;
        BedPlan[] plans = answer.Beds.IsEmpty
            ? answer.WholeBatch is { } whole
                ? [whole]
                : []
            : [.. answer.Beds];
        var total = plans.Length == 0 ? null : BedPlanner.Total([.. plans]);
        var barrow = Barrow(told);
        return new JsonObject
        {
            ["depth_cm"] = Of(total?.Centimetres),
            ["area_m2"] = Of(total?.SquareMetres),
            ["volume_l"] = Of(total?.Litres),
            ["mass_kg"] = Of(total?.Kilograms),
            ["wheelbarrows"] = Of(Barrows(total?.Litres, barrow)),
            ["nitrogen_kg"] = Of(total?.Nitrogen),
            ["first_year_nitrogen_kg"] = Of(total?.FirstYearNitrogen),
            ["phosphorus_kg"] = Of(total?.Phosphorus),
            ["potassium_kg"] = Of(total?.Potassium),
            ["available_l"] = Of(answer.Yield.UsableVolume),
            ["left_over_l"] = Of(answer.LeftOver?.Map(l => Math.Max(0, l))),
            ["short_l"] = Of(answer.LeftOver?.Map(l => Math.Max(0, -l))),
            ["beds"] = new JsonArray([.. answer.Beds.Select(b => Bed(b, told, barrow))]),
            ["covers"] = new JsonArray([
                .. answer.Covers.Select(c => new JsonObject
                {
                    ["depth_cm"] = c.Centimetres,
                    ["area_m2"] = Of(c.SquareMetres),
                }),
            ]),
            ["limits"] = answer.WholeBatch is { } all ? Limits(all) : [],
            ["containers"] = ContainerReader.Sizes([told.Reader.Containers.Find("wheelbarrow")!]),
        };
    }

    /// <summary>The size of a wheelbarrow in litres; null where it was given as a mass.</summary>
    public static Spread? Barrow(FinishTold told)
    {
        var unit = told.Reader.Containers.Find("wheelbarrow")!;
        return unit.IsMass ? null : unit.Size;
    }

    /// <summary>Wheelbarrows of a volume.</summary>
    public static Sampled? Barrows(Sampled? litres, Spread? barrow)
    {
        if (litres is null || barrow is not { } size)
        {
            return null;
        }

        var cases = new SamplePoints(1).Draw("unit wheelbarrow", size, SpreadScale.Positive);
        return litres.With(new Sampled(cases, Origin.Usual), (l, b) => l / b);
    }

    private static JsonNode Bed(BedPlan plan, FinishTold told, Spread? barrow) =>
        new JsonObject
        {
            ["name"] = plan.Bed.Name,
            ["use"] = FinishTableReader.Word(plan.Bed.Use),
            ["crop"] = plan.Bed.Crop?.Id,
            ["area_m2"] = Of(plan.SquareMetres),
            ["depth_cm"] = Of(plan.Centimetres),
            ["depth_from"] = plan.Centimetres.From switch
            {
                Origin.Measured => "asked",
                Origin.Volume => "batch",
                _ => "usual",
            },
            ["volume_l"] = Of(plan.Litres),
            ["mass_kg"] = Of(plan.Kilograms),
            ["wheelbarrows"] = Of(Barrows(plan.Litres, barrow)),
            ["nitrogen_kg"] = Of(plan.Total(plan.Nitrogen)),
            ["nitrogen_g_m2"] = Of(plan.Nitrogen),
            ["first_year_nitrogen_kg"] = Of(plan.Total(plan.FirstYearNitrogen)),
            ["first_year_nitrogen_g_m2"] = Of(plan.FirstYearNitrogen),
            ["phosphorus_g_m2"] = Of(plan.Phosphorus),
            ["phosphorus_years"] = Of(plan.PhosphorusYears),
            ["potassium_g_m2"] = Of(plan.Potassium),
            ["nitrogen_need_g_m2"] = Json.Of(plan.Bed.NitrogenNeed),
            ["chance_nitrogen_enough"] = Json.Of(plan.ChanceEnough),
            ["need_kind"] =
                plan.Bed.Crop is { } crop && plan.Bed.NitrogenNeed == crop.NitrogenNeed
                    ? EvidenceKinds.Word(crop.Kind)
                    : null,
            ["limits"] = Limits(plan),
            ["harvest_after_days"] = Json.Of(plan.HarvestDays),
            ["harvest_from_date"] = plan.HarvestDays is { } days
                ? told.Reader.Dates.After(days)
                : null,
        };

    private static JsonArray Limits(BedPlan plan) =>
        new([
            .. plan.Limits.Select(l => new JsonObject
            {
                ["id"] = l.Figure.Id,
                ["value"] = Of(l.Value),
                ["limit"] = l.Figure.Value.Typical,
                ["status"] = Status(l),
                ["chance_within"] = l.ChanceWithin,
                ["source"] = l.Figure.Citation,
                ["reference"] = l.Figure.Source,
                ["kind"] = EvidenceKinds.Word(l.Figure.Kind),
            }),
        ]);

    /// <summary>within, beyond or uncertain.</summary>
    public static string Status(LimitFinding limit) =>
        limit.ChanceWithin switch
        {
            >= 0.95 => "within",
            <= 0.05 => "beyond",
            _ => "uncertain",
        };

    private static JsonNode Share(FinishFigure figure) =>
        new JsonObject
        {
            ["id"] = figure.Id,
            ["low_pct"] = figure.Value.Low,
            ["high_pct"] = figure.Value.High,
            ["source"] = figure.Citation,
            ["reference"] = figure.Source,
            ["kind"] = EvidenceKinds.Word(figure.Kind),
        };

    private static Sampled P2O5(Sampled phosphorus) =>
        phosphorus.Map(p => p / Oxides.PhosphorusInP2O5);

    private static Sampled K2O(Sampled potassium) => potassium.Map(k => k / Oxides.PotassiumInK2O);

    private static double Cubic(double litres) => litres / 1000;

    private static JsonNode? Of(Sampled? value) => value is null ? null : Json.Of(value.Value);

    private static string? From(Sampled? value) =>
        value is null ? null : FinishWords.Code(value.From);
}
