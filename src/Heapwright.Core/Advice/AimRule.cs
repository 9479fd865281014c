using Heapwright.Core.Forecasts;

namespace Heapwright.Core.Advice;

/// <summary>What an aim counts: what is good, what a minute of work must bring, and from where a gain is worth speaking of.</summary>
/// <param name="Worth">Of an outcome, in the unit of the aim.</param>
/// <param name="PerMinute">What a minute of work must bring.</param>
/// <param name="Margin">A smaller gain than this is left alone, so that advice does not flip with every reading.</param>
internal sealed record AimRule(Func<HeapOutcome, double> Worth, double PerMinute, double Margin)
{
    private const double Never = 200; // d

    // Percent of the matter for a day earlier or later: among what heats alike the sooner is better.
    private const double PercentPerDay = 0.2;

    /// <summary>The rule of an aim; the prices are judgements of our own.</summary>
    /// <param name="aim">The aim.</param>
    /// <param name="now">The present, days since building.</param>
    public static AimRule Of(AdviceAim aim, double now)
    {
        double Days(HeapOutcome o) =>
            double.IsNaN(o.DoneDay) ? Never : Math.Min(o.DoneDay - now, Never);
        return aim switch
        {
            AdviceAim.Fast => new AimRule(o => -Days(o), 0.02, 1.5),
            AdviceAim.KeepNitrogen => new AimRule(o => -o.NitrogenLossPercent, 0.01, 0.5),
            AdviceAim.LeastWork => new AimRule(o => o.ShareHeldPercent, 0.4, 5),
            _ => new AimRule(o => o.ShareHeldPercent - (PercentPerDay * Days(o)), 0.1, 3),
        };
    }
}
