using System.Collections.Immutable;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.FinishedCompost;

/// <summary>Shares compost out to beds.</summary>
public sealed class BedPlanner
{
    private const double Slack = 1e-9; // so that a limit met to the last bit is met

    private readonly FinishTables tables;
    private readonly SamplePoints points;
    private readonly CompostYield yield;
    private readonly CompostNutrients nutrients;

    /// <summary>Prepares to share out.</summary>
    /// <param name="yield">How much there is.</param>
    /// <param name="nutrients">What is in it.</param>
    /// <param name="tables">The limits.</param>
    /// <param name="points">The sample set of the question.</param>
    public BedPlanner(
        CompostYield yield,
        CompostNutrients nutrients,
        FinishTables tables,
        SamplePoints points
    )
    {
        this.yield = yield;
        this.nutrients = nutrients;
        this.tables = tables;
        this.points = points;
    }

    /// <summary>What every bed gets: those with a depth first, the rest as deep as what is left goes, up to the limit.</summary>
    /// <param name="beds">The beds.</param>
    /// <param name="manure">Whether manure is in it; null where nobody knows.</param>
    /// <param name="shownHot">Whether all of it was shown to be hot.</param>
    public ImmutableArray<BedPlan> Plan(ImmutableArray<Bed> beds, bool? manure, bool shownHot)
    {
        var areas = beds.Select((b, i) => Draw($"area {i} {b.Name}", b.SquareMetres)).ToArray();
        var depths = beds.Select(
                (b, i) =>
                    b.DepthCentimetres is { } depth ? Draw($"depth {i} {b.Name}", depth) : null
            )
            .ToArray();
        var share = Left(areas, depths);
        return [.. beds.Select((b, i) => Plan(b, areas[i], depths[i] ?? share!, manure, shownHot))];
    }

    /// <summary>Litres left over after the beds; below 0 where there is not enough; null where the volume is not known.</summary>
    /// <param name="plans">What the beds get.</param>
    public Sampled? LeftOver(ImmutableArray<BedPlan> plans)
    {
        if (yield.UsableVolume is not { } volume)
        {
            return null;
        }

        foreach (var plan in plans)
        {
            volume = volume.With(plan.Litres, (v, l) => Math.Abs(v - l) < Slack ? 0 : v - l);
        }

        return volume;
    }

    /// <summary>The whole batch at one depth, wherever it goes; null where the volume is not known.</summary>
    /// <param name="depth">The depth, cm; null for the usual one.</param>
    /// <param name="manure">Whether manure is in it; null where nobody knows.</param>
    /// <param name="shownHot">Whether all of it was shown to be hot.</param>
    public BedPlan? WholeBatch(Spread? depth, bool? manure, bool shownHot)
    {
        if (yield.UsableVolume is not { } volume)
        {
            return null;
        }

        var laid = depth is { } asked ? Draw("asked depth", asked) : UsualDepth();
        var area = volume.With(laid, Spreading.SquareMetres);
        var bed = new Bed { Name = "batch", SquareMetres = area.Value };
        return Plan(bed, area, laid, manure, shownHot);
    }

    /// <summary>How far the batch goes at the lowest, middle and highest of the usual depths.</summary>
    public ImmutableArray<Coverage> Covers()
    {
        var usual = tables["usual_depth_cm"];
        return yield.UsableVolume is not { } volume
            ? []
            :
            [
                .. ((double[])[usual.Low, usual.Typical, usual.High]).Select(d => new Coverage(
                    d,
                    volume.Map(v => Spreading.SquareMetres(v, d))
                )),
            ];
    }

    /// <summary>All beds together: areas, litres and kilograms added, the rest by the area.</summary>
    /// <param name="plans">What the beds get; at least one.</param>
    public static BedTotal Total(ImmutableArray<BedPlan> plans)
    {
        Sampled Sum(Func<BedPlan, Sampled> of) =>
            plans.Skip(1).Aggregate(of(plans[0]), (sum, p) => sum.With(of(p), (a, b) => a + b));
        var (area, litres) = (Sum(p => p.SquareMetres), Sum(p => p.Litres));
        return new BedTotal(
            area,
            plans.Length == 1 ? plans[0].Centimetres : litres.With(area, Spreading.Centimetres),
            litres,
            Sum(p => p.Kilograms),
            Sum(p => p.Total(p.Nitrogen)),
            Sum(p => p.Total(p.FirstYearNitrogen)),
            Sum(p => p.Total(p.Phosphorus)),
            Sum(p => p.Total(p.Potassium))
        );
    }

    private Sampled UsualDepth() =>
        new(
            points.Draw("usual depth", tables["usual_depth_cm"], SpreadScale.Positive),
            Origin.Usual
        );

    private Sampled Draw(string name, Spread value) =>
        new(points.Draw(name, value, SpreadScale.Positive), Origin.Measured);

    // The depth of the beds that name none.
    private Sampled? Left(Sampled[] areas, Sampled?[] depths)
    {
        if (depths.All(d => d is not null))
        {
            return null;
        }

        if (yield.UsableVolume is not { } volume)
        {
            return UsualDepth();
        }

        var most = tables["most_depth_cm"].Typical;
        var cases = new double[SamplePoints.Count];
        for (var i = 0; i < cases.Length; i++)
        {
            var (left, open) = (volume.Cases[i], 0.0);
            for (var b = 0; b < areas.Length; b++)
            {
                if (depths[b] is { } depth)
                {
                    left -= Spreading.Litres(areas[b].Cases[i], depth.Cases[i]);
                }
                else
                {
                    open += areas[b].Cases[i];
                }
            }

            cases[i] = Math.Clamp(Spreading.Centimetres(left, open), 0, most);
        }

        return new Sampled(cases, Origin.Volume);
    }

    private BedPlan Plan(Bed bed, Sampled area, Sampled depth, bool? manure, bool shownHot)
    {
        var litres = depth.With(area, (d, a) => Spreading.Litres(a, d));
        var kilograms = litres.With(yield.BulkDensity, (l, r) => l * r / 1000);
        // g of dry matter on a square metre
        var dry = depth
            .With(yield.BulkDensity, (d, r) => Spreading.Litres(1, d) * r)
            .With(yield.Moisture, (w, m) => w * (100 - m) / 100);
        Sampled Of(Sampled percent) => dry.With(percent, (d, p) => d * p / 100);
        var nitrogen = Of(nutrients.Nitrogen);
        var phosphorus = Of(nutrients.Phosphorus);
        var taken = points.Draw(
            "crop phosphorus",
            tables["crop_phosphorus_g_m2"],
            SpreadScale.Positive
        );
        var first = nitrogen.With(nutrients.FirstYearNitrogenPercent, (n, p) => n * p / 100);
        return new BedPlan
        {
            Bed = bed,
            SquareMetres = area,
            Centimetres = depth,
            Litres = litres,
            Kilograms = kilograms,
            Nitrogen = nitrogen,
            FirstYearNitrogen = first,
            Phosphorus = phosphorus,
            PhosphorusYears = new(
                [.. phosphorus.Cases.Zip(taken, (p, t) => p / t)],
                phosphorus.From
            ),
            Potassium = Of(nutrients.Potassium),
            ChanceEnough = bed.NitrogenNeed is { } need ? ChanceEnough(first, need) : null,
            Limits = Limits(bed, depth, nitrogen, manure),
            HarvestDays = HarvestDays(bed, manure, shownHot),
        };
    }

    private double ChanceEnough(Sampled supply, Spread need)
    {
        var needs = points.Draw("need", need, SpreadScale.Positive);
        return supply.Cases.Where((s, i) => s >= needs[i]).Count() / (double)needs.Length;
    }

    private ImmutableArray<LimitFinding> Limits(
        Bed bed,
        Sampled depth,
        Sampled nitrogen,
        bool? manure
    )
    {
        var limits = ImmutableArray.CreateBuilder<LimitFinding>();
        if (bed.Use == CompostUse.Beds)
        {
            limits.Add(Limit("most_depth_cm", depth));
            var tilled = Draw(
                "tilled " + bed.Name,
                bed.TilledCentimetres ?? tables["usual_tilled_cm"]
            );
            var share = depth.With(tilled, (d, t) => Math.Min(100, 100 * d / t));
            limits.Add(Limit("most_share_pct", share));
            limits.Add(Limit("diluted_share_pct", share));
        }

        if (manure != false)
        {
            limits.Add(Limit("manure_nitrogen_g_m2", nitrogen));
        }

        return limits.ToImmutable();
    }

    private LimitFinding Limit(string figure, Sampled value)
    {
        var most = tables[figure].Typical * (1 + Slack);
        return new LimitFinding(
            tables.Figures[figure],
            value,
            value.Cases.Count(c => c <= most) / (double)value.Cases.Count
        );
    }

    private double? HarvestDays(Bed bed, bool? manure, bool shownHot) =>
        !bed.IsFood || manure == false || shownHot ? 0
        : manure is null ? null
        : bed.TouchesSoil ? tables["manure_touching_days"].Typical
        : tables["manure_apart_days"].Typical;
}
