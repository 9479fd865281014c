using System.Collections.Immutable;
using Heapwright.Core.Quantities;
using Heapwright.Core.Reasons;

namespace Heapwright.Core.FinishedCompost;

/// <summary>Holds compost against what each use asks of it.</summary>
internal sealed class UseJudge
{
    private const double Likely = 0.75; // ripe enough to say yes
    private const double Unlikely = 0.35; // too unripe to say "cannot tell"
    private const double Rather = 0.5; // a class is taken for true

    private readonly FinishQuestion question;
    private readonly FinishTables tables;
    private readonly SamplePoints points;
    private readonly StageFinding stage;
    private readonly ImmutableArray<ScaleFinding> scales;
    private readonly ImmutableArray<EvidenceRow> signs;
    private readonly PotTestVerdict? pots;

    public UseJudge(
        FinishQuestion question,
        FinishTables tables,
        SamplePoints points,
        StageFinding stage,
        ImmutableArray<ScaleFinding> scales,
        ImmutableArray<EvidenceRow> signs
    )
    {
        this.question = question;
        this.tables = tables;
        this.points = points;
        this.stage = stage;
        this.scales = scales;
        this.signs = signs;
        pots = question.Pots?.Verdict(Finisher.PotNeeds(tables));
    }

    /// <summary>The stage that a use asks for.</summary>
    public static CompostStage Asked(CompostUse use) =>
        use switch
        {
            CompostUse.Mulch => CompostStage.Cooling,
            CompostUse.Beds or CompostUse.Lawn => CompostStage.Curing,
            _ => CompostStage.Mature,
        };

    public UseFinding Judge(CompostUse use)
    {
        var reasons = ImmutableArray.CreateBuilder<Reason>();
        var ripe = stage.Reached(Asked(use));
        var stays = BarsThatStay(use, reasons);
        var mends = BarsThatMend(use, reasons);
        var testing = 0.0; // days until a test is over
        UseVerdict verdict;
        if (stays)
        {
            verdict = UseVerdict.No;
        }
        else if (mends)
        {
            verdict = UseVerdict.NotYet;
        }
        else if (stage.Clues.IsEmpty)
        {
            reasons.Add(Reason.Of("finish.use_nothing_known"));
            verdict = UseVerdict.CannotTell;
        }
        else
        {
            verdict =
                ripe >= Likely ? UseVerdict.Yes
                : ripe <= Unlikely ? UseVerdict.NotYet
                : UseVerdict.CannotTell;
            reasons.Add(
                Reason.Of(
                    verdict switch
                    {
                        UseVerdict.Yes => "finish.use_ripe",
                        UseVerdict.NotYet => "finish.use_unripe",
                        _ => "finish.use_unsure",
                    },
                    Asked(use),
                    100 * ripe
                )
            );
        }

        var care = Care(use, reasons);
        if (verdict != UseVerdict.No && Untested(use, reasons, ref testing))
        {
            verdict = verdict == UseVerdict.NotYet ? verdict : UseVerdict.CannotTell;
        }

        verdict = verdict == UseVerdict.Yes && care ? UseVerdict.WithCare : verdict;
        return new UseFinding(
            use,
            verdict,
            ripe,
            reasons.ToImmutable(),
            Wait(use, verdict, mends, testing)
        );
    }

    private bool BarsThatStay(CompostUse use, ImmutableArray<Reason>.Builder reasons)
    {
        var bars = Bars(use, mends: false, reasons);
        if (pots == PotTestVerdict.Harmed && use != CompostUse.Lawn)
        {
            reasons.Add(Reason.Of("finish.use_herbicide"));
            bars = true;
        }

        return bars;
    }

    private bool BarsThatMend(CompostUse use, ImmutableArray<Reason>.Builder reasons)
    {
        var bars = Bars(use, mends: true, reasons);
        foreach (var sign in signs.Where(s => s.Limits.Bars.Contains(use)))
        {
            reasons.Add(Reason.Of("finish.use_sign", sign.Sign, sign.Found));
            bars = true;
        }

        return bars;
    }

    private bool Bars(CompostUse use, bool mends, ImmutableArray<Reason>.Builder reasons)
    {
        var bars = false;
        foreach (
            var finding in scales.Where(f =>
                f.Scale.Mends == mends && f.ChanceBarred(use) >= Rather
            )
        )
        {
            reasons.Add(Reason.Of("finish.use_barred", finding.Scale.Id, finding.Class.Name));
            bars = true;
        }

        return bars;
    }

    private bool Care(CompostUse use, ImmutableArray<Reason>.Builder reasons)
    {
        var before = reasons.Count;
        foreach (
            var finding in scales.Where(f =>
                f.ChanceBarred(use) < Rather && f.ChanceCare(use) >= Rather
            )
        )
        {
            reasons.Add(Reason.Of("finish.use_care", finding.Scale.Id, finding.Class.Name));
        }

        foreach (var sign in signs.Where(s => s.Limits.Cares.Contains(use)))
        {
            reasons.Add(Reason.Of("finish.use_sign_care", sign.Sign, sign.Found));
        }

        if (question.Manure == true && !question.ShownHot)
        {
            reasons.Add(
                Reason.Of(
                    "finish.use_manure",
                    tables["manure_touching_days"].Typical,
                    tables["manure_apart_days"].Typical
                )
            );
        }

        if (pots == PotTestVerdict.Harmed && use == CompostUse.Lawn)
        {
            reasons.Add(Reason.Of("finish.use_herbicide_lawn"));
        }

        var sown = use is CompostUse.Potting or CompostUse.Seedlings;
        if (sown && !question.Measured.ContainsKey("ec_ds_m"))
        {
            reasons.Add(Reason.Of("finish.use_salt_unknown"));
        }

        if (use == CompostUse.Potting)
        {
            reasons.Add(Reason.Of("finish.use_dilute", tables["diluted_share_pct"].Typical));
        }

        return reasons.Count > before;
    }

    // Tests without which nobody should say yes.
    private bool Untested(
        CompostUse use,
        ImmutableArray<Reason>.Builder reasons,
        ref double testing
    )
    {
        var untested = false;
        if (
            use == CompostUse.Seedlings
            && !scales.Any(f =>
                f.Scale.Quantity is "germination_pct_of_control" or "germination_index"
            )
        )
        {
            reasons.Add(Reason.Of("finish.use_seeds_untested"));
            untested = true;
        }

        if (
            question.HerbicideRisk == true
            && pots is not (PotTestVerdict.Clean or PotTestVerdict.Harmed)
            && use is not (CompostUse.Lawn or CompostUse.Mulch)
        )
        {
            testing = Math.Max(0, tables["bean_test_days"].High - (question.Pots?.Days ?? 0));
            reasons.Add(Reason.Of("finish.use_herbicide_untested", testing));
            untested = true;
        }

        return untested;
    }

    private Spread? Wait(CompostUse use, UseVerdict verdict, bool mends, double testing)
    {
        if (verdict is UseVerdict.Yes or UseVerdict.WithCare)
        {
            return Spread.Exact(0);
        }

        if (verdict == UseVerdict.No || (stage.Clues.IsEmpty && !mends))
        {
            return null;
        }

        var days = Waiting.Days(Asked(use), stage, tables, points);
        var again = points.Draw("mend_days", tables["mend_days"], SpreadScale.Positive);
        for (var i = 0; i < days.Length; i++)
        {
            days[i] = Math.Max(Math.Max(days[i], testing), mends ? again[i] : 0);
        }

        return Spread.OfSample(days);
    }
}
