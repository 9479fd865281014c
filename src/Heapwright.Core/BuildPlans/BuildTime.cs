using Heapwright.Core.Mixtures;

namespace Heapwright.Core.BuildPlans;

/// <summary>
/// How long building takes with the stuff beside the bay: ten minutes to set out, then a minute for every 10 kg
/// lifted (water included), for every 35 litres forked and for every litre that must be cut, torn or soaked its own
/// time. An estimate from practice, no source.
/// </summary>
internal static class BuildTime
{
    private const double SetOut = 10;

    /// <summary>What one person lifts in a minute, kg.</summary>
    public const double KilogramsPerMinute = 10;

    /// <summary>What one person forks in a minute, litres.</summary>
    public const double LitresPerMinute = 35;

    /// <summary>Two people share the work but not the setting out, and stand in each other's way a little.</summary>
    private const double TwoShare = 0.55;

    /// <summary>Minutes for one person and for two, in steps of five.</summary>
    public static (TimeSpan One, TimeSpan Two) Of(Mixture mixture, IEnumerable<Stuff> stuffs)
    {
        var work =
            (mixture.Typical.Matter.WetMass / KilogramsPerMinute)
            + (mixture.Typical.Matter.LooseVolume / LitresPerMinute)
            + stuffs.Sum(s => s.Litres * s.Prepare.Sum(PreparePerLitre));
        return (Round(SetOut + work), Round(SetOut + (TwoShare * work)));
    }

    private static double PreparePerLitre(string code) =>
        code switch
        {
            "chop_short" or "tear" => 0.08,
            "shred" => 0.04,
            "break_up" or "fluff" or "crush" or "shake_out_soil" => 0.02,
            "remove_tape_and_plastic" or "rinse_salt" => 0.03,
            "soak_first" => 0.01,
            _ => 0,
        };

    private static TimeSpan Round(double minutes) =>
        TimeSpan.FromMinutes(5 * Math.Max(1, Math.Round(minutes / 5)));
}
