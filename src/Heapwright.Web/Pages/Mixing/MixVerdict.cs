using Heapwright.Web.Showing;

namespace Heapwright.Web.Pages.Mixing;

/// <summary>One sentence on a mix: yes, or what is in the way, the gravest first.</summary>
/// <param name="IsGood">Whether nothing is in the way.</param>
/// <param name="Sentence">The sentence.</param>
/// <param name="Why">What it means, and what helps.</param>
public sealed record MixVerdict(bool IsGood, string Sentence, string Why)
{
    // Above this the carbon that can rot is too much for the nitrogen; the end of what is called fine.
    private const double MostAvailable = 24;

    private static readonly (string Quantity, string Status)[] Gravest =
    [
        ("free_air_space_settled_pct", "low"),
        ("moisture_pct_wb", "high"),
        ("moisture_pct_wb", "low"),
        ("carbon_nitrogen_ratio", "low"),
        ("carbon_nitrogen_ratio", "high"),
    ];

    /// <summary>The verdict on the gauges of a mix.</summary>
    /// <param name="gauges">The gauges.</param>
    public static MixVerdict Of(IReadOnlyList<GaugeView> gauges)
    {
        ArgumentNullException.ThrowIfNull(gauges);
        foreach (var (quantity, status) in Gravest)
        {
            var gauge = gauges.FirstOrDefault(g => g.Quantity == quantity && g.Status == status);
            if (gauge is not null && !IsOnlyWood(gauge, gauges))
            {
                return new MixVerdict(false, Say.Of($"mix.verdict_{quantity}_{status}"), gauge.Why);
            }
        }

        var unsure = gauges.FirstOrDefault(g =>
            g.Status == "uncertain"
            && g.Quantity
                is "carbon_nitrogen_ratio"
                    or "moisture_pct_wb"
                    or "free_air_space_settled_pct"
        );
        return unsure is null
            ? new MixVerdict(true, Say.Of("mix.verdict_good"), Say.Of("mix.verdict_good_why"))
            : new MixVerdict(
                true,
                Say.Of("mix.verdict_unsure"),
                Say.Of("mix.verdict_unsure_why", Say.Of("gauges." + unsure.Quantity))
            );
    }

    private static bool IsOnlyWood(GaugeView gauge, IReadOnlyList<GaugeView> gauges) =>
        gauge is { Quantity: "carbon_nitrogen_ratio", Status: "high" }
        && gauges.Any(g =>
            g.Quantity == "available_carbon_nitrogen_ratio" && g.Value.Typical <= MostAvailable
        );
}
