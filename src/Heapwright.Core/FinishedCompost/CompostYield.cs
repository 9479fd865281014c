using System.Collections.Immutable;
using Heapwright.Core.Quantities;
using Heapwright.Core.Reasons;

namespace Heapwright.Core.FinishedCompost;

/// <summary>How much compost there is, and what was lost on the way, at every point of the sample set.</summary>
public sealed record CompostYield
{
    private const double LightestKilograms = 200; // in a cubic metre
    private const double HeaviestKilograms = 1200;

    /// <summary>kg as it lies.</summary>
    public Sampled? WetMass { get; init; }

    /// <summary>kg of dry matter.</summary>
    public Sampled? DryMass { get; init; }

    /// <summary>Litres.</summary>
    public Sampled? Volume { get; init; }

    /// <summary>Water, % of wet mass.</summary>
    public required Sampled Moisture { get; init; }

    /// <summary>kg/m³.</summary>
    public required Sampled BulkDensity { get; init; }

    /// <summary>Dry mass left, a share of that at the start.</summary>
    public Sampled? DryShareLeft { get; init; }

    /// <summary>% of the mass at the start.</summary>
    public Sampled? MassPercent { get; init; }

    /// <summary>% of the volume at the start.</summary>
    public Sampled? VolumePercent { get; init; }

    /// <summary>Dry mass lost, % of that at the start.</summary>
    public Sampled? DryLossPercent { get; init; }

    /// <summary>Organic matter lost, % of that at the start.</summary>
    public Sampled? OrganicLossPercent { get; init; }

    /// <summary>What a sieve holds back, % of mass and volume; null where it was not sieved.</summary>
    public Sampled? Oversize { get; init; }

    /// <summary>Litres to use: without what the sieve holds back.</summary>
    public Sampled? UsableVolume =>
        Oversize is { } over ? Volume?.With(over, (v, o) => v * (100 - o) / 100) : Volume;

    /// <summary>kg to use: without what the sieve holds back.</summary>
    public Sampled? UsableMass =>
        Oversize is { } over ? WetMass?.With(over, (m, o) => m * (100 - o) / 100) : WetMass;

    /// <summary>Whether the mass was joined from a usual density and the mass at the start, as it was not weighed.</summary>
    public bool IsMassJoined { get; init; }

    /// <summary>What does not fit together.</summary>
    public ImmutableArray<Reason> Doubts { get; init; } = [];

    /// <summary>Works out the yield from the surest of what is known.</summary>
    /// <param name="start">The heap at its start.</param>
    /// <param name="end">What was measured of the compost.</param>
    /// <param name="simulated">What the simulation says of it; null where it was not followed.</param>
    /// <param name="tables">The figures that are used where nothing was measured.</param>
    /// <param name="points">The sample set of the question.</param>
    public static CompostYield Of(
        StartMatter start,
        MatterGiven end,
        MatterGiven? simulated,
        FinishTables tables,
        SamplePoints points
    )
    {
        ArgumentNullException.ThrowIfNull(start);
        ArgumentNullException.ThrowIfNull(end);
        ArgumentNullException.ThrowIfNull(tables);
        ArgumentNullException.ThrowIfNull(points);
        var draw = new EndDraw(end, tables, points);
        var doubts = ImmutableArray.CreateBuilder<Reason>();
        var (left, organic) = FromAsh(start, draw, doubts);

        var moisture =
            draw.Percent("moisture", end.Moisture)
            ?? draw.Simulated("moisture", simulated?.Moisture, SpreadScale.Percent)
            ?? draw.Usual("moisture_pct_wb", SpreadScale.Percent);
        var weighed = draw.Amount("wet mass", end.WetMass);
        var weighedDry = draw.Amount("dry mass", end.DryMass);
        if (weighed is not null && weighedDry is not null && end.Moisture is null)
        {
            moisture = weighed.With(weighedDry, (w, d) => Math.Clamp(100 * (1 - (d / w)), 0, 99.9));
        }

        weighed ??= weighedDry?.With(moisture, (d, m) => 100 * d / (100 - m));
        var measured = draw.Amount("volume", end.Volume);
        var known =
            weighed
            ?? (
                left is not null ? FromDry(start.DryMass, left, moisture)
                : end.BulkDensity is not null ? null
                : draw.Simulated("dry mass", simulated?.DryMass, SpreadScale.Positive)
                    ?.With(moisture, (d, m) => 100 * d / (100 - m))
            );
        var size = measured ?? draw.Simulated("volume", simulated?.Volume, SpreadScale.Positive);
        var density =
            end.BulkDensity is null && known is not null && size is not null
                ? known.With(size, (w, v) => 1000 * w / v)
                : draw.Positive("density", end.BulkDensity, "bulk_density_kg_m3");
        SayUnlikelyDensity(density, doubts);
        var wet = known ?? measured?.With(density, (v, d) => v * d / 1000, Origin.Volume);
        var joins =
            known is null
            && end.BulkDensity is null
            && wet is not null
            && start.WetMass is not null;
        if (joins)
        {
            wet = Joined(wet!, start, draw, moisture);
            density = wet.With(measured!, (w, v) => 1000 * w / v, Origin.Usual);
        }

        var volume = known is null ? measured : size;
        if (wet is null && start.WetMass is { } built)
        {
            var usual = built.With(
                draw.Usual("mass_pct_of_start"),
                (w, p) => w * p / 100,
                Origin.Usual
            );
            wet = NoMoreThanThereWas(usual, start, moisture);
            volume ??= UsualVolume(start, draw);
        }
        else if (wet is null && UsualVolume(start, draw) is { } shrunk)
        {
            volume = shrunk;
            wet = shrunk.With(density, (v, d) => v * d / 1000);
        }

        volume ??= wet?.With(density, (w, d) => 1000 * w / d);
        var dry =
            weighed is not null && weighedDry is not null
                ? weighedDry
                : wet?.With(moisture, (w, m) => w * (100 - m) / 100);
        var weighedLeft =
            dry is null || start.DryMass is null || dry.From == Origin.Ash
                ? null
                : dry.With(start.DryMass, (d, s) => d / s);
        SayDisagreement(left, weighedLeft, doubts);
        return new CompostYield
        {
            WetMass = wet,
            DryMass = dry,
            Volume = volume,
            Moisture = moisture,
            BulkDensity = density,
            DryShareLeft = left ?? weighedLeft,
            MassPercent =
                wet is null || start.WetMass is null
                    ? null
                    : wet.With(start.WetMass, (e, s) => 100 * e / s),
            VolumePercent =
                volume is null || start.Volume is null
                    ? null
                    : volume.With(start.Volume, (e, s) => 100 * e / s),
            DryLossPercent = left is not null
                ? start.Ash!.With(draw.Ash!, AshTracer.DryLossPercent, Origin.Ash)
                : weighedLeft?.Map(s => 100 * (1 - s)),
            OrganicLossPercent = organic,
            Oversize = draw.Percent("oversize", end.Oversize),
            IsMassJoined = joins,
            Doubts = doubts.ToImmutable(),
        };
    }

    private static (Sampled? Left, Sampled? Organic) FromAsh(
        StartMatter start,
        EndDraw draw,
        ImmutableArray<Reason>.Builder doubts
    )
    {
        if (start.Ash is not { } before || draw.Ash is not { } after)
        {
            return (null, null);
        }

        var left = before.With(after, AshTracer.DryShareLeft, Origin.Ash);
        if (left.Value.Typical > 1)
        {
            doubts.Add(
                Reason.Of("finish.ash_went_down", before.Value.Typical, after.Value.Typical)
            );
            return (null, null);
        }

        return (left, before.With(after, AshTracer.OrganicLossPercent, Origin.Ash));
    }

    // Two weak guesses of one mass: a usual density, and the usual share of the mass at the start. In logarithms each counts
    // by the inverse of its variance; and no more dry matter can be left than there was.
    private static Sampled Joined(
        Sampled byVolume,
        StartMatter start,
        EndDraw draw,
        Sampled moisture
    )
    {
        var byMass = start.WetMass!.With(
            draw.Usual("mass_pct_of_start"),
            (w, p) => w * p / 100,
            Origin.Usual
        );
        var (one, other) = (Precision(byVolume), Precision(byMass));
        var wet = byVolume.With(
            byMass,
            (a, b) => Math.Exp(((one * Math.Log(a)) + (other * Math.Log(b))) / (one + other))
        );
        return NoMoreThanThereWas(wet, start, moisture);
    }

    // A guess must not say that dry matter was gained.
    private static Sampled NoMoreThanThereWas(Sampled wet, StartMatter start, Sampled moisture) =>
        start.DryMass is { } dry
            ? wet.With(dry.With(moisture, (d, m) => 100 * d / (100 - m)), Math.Min)
            : wet;

    private static double Precision(Sampled mass)
    {
        const double Ends = 3.29; // standard deviations between the 5th and the 95th percentile
        const double Least = 0.01;
        var deviation = Math.Max(Least, Math.Log(mass.Value.High / mass.Value.Low) / Ends);
        return 1 / (deviation * deviation);
    }

    private static Sampled? FromDry(Sampled? dry, Sampled left, Sampled moisture) =>
        dry?.With(left, (d, l) => d * l, Origin.Ash).With(moisture, (d, m) => 100 * d / (100 - m));

    private static Sampled? UsualVolume(StartMatter start, EndDraw draw) =>
        start.Volume?.With(draw.Usual("volume_pct_of_start"), (v, p) => v * p / 100, Origin.Usual);

    // No compost that is not packed or soaked is heavier, and none that is not dry wood or leaves is lighter.
    private static void SayUnlikelyDensity(Sampled density, ImmutableArray<Reason>.Builder doubts)
    {
        if (
            density.From is Origin.Measured or Origin.Ash
            && (density.Value.High < LightestKilograms || density.Value.Low > HeaviestKilograms)
        )
        {
            doubts.Add(Reason.Of("finish.density_unlikely", density.Value.Typical));
        }
    }

    private static void SayDisagreement(
        Sampled? ash,
        Sampled? weighed,
        ImmutableArray<Reason>.Builder doubts
    )
    {
        if (
            ash?.Value is { } a
            && weighed is { From: Origin.Measured or Origin.Volume }
            && weighed.Value is var w
            && (a.High < w.Low || w.High < a.Low)
            && Math.Abs(a.Typical - w.Typical) > 0.05
        )
        {
            doubts.Add(Reason.Of("finish.ash_against_scales", 100 * a.Typical, 100 * w.Typical));
        }

        if (weighed is { From: Origin.Measured or Origin.Volume } && weighed.Value.Low > 1)
        {
            doubts.Add(Reason.Of("finish.more_than_at_start", 100 * weighed.Value.Typical));
        }
    }
}
