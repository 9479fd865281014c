namespace Heapwright.Core.FinishedCompost;

/// <summary>Beans or peas in pots with compost and in pots without: a test for weedkillers that outlast the heap.</summary>
/// <param name="Pots">How many pots with compost.</param>
/// <param name="Harmed">In how many of them leaves are cupped, curled or twisted; null where nobody looked.</param>
/// <param name="ControlPots">How many pots without.</param>
/// <param name="ControlHarmed">In how many of those leaves are cupped, curled or twisted; null where nobody looked.</param>
/// <param name="Days">Days since sowing; null where not known.</param>
/// <param name="LeafSets">Sets of leaves; null where not known.</param>
public sealed record PotTest(
    int Pots,
    int? Harmed,
    int ControlPots,
    int? ControlHarmed,
    double? Days,
    double? LeafSets
)
{
    /// <summary>What it shows.</summary>
    /// <param name="least">What is asked of it.</param>
    public PotTestVerdict Verdict(PotTestNeeds least)
    {
        ArgumentNullException.ThrowIfNull(least);
        if (Harmed is not { } harmed)
        {
            return PotTestVerdict.TooEarly;
        }

        if (ControlPots == 0)
        {
            return harmed > 0 ? PotTestVerdict.NoControl : PotTestVerdict.TooFewPots;
        }

        if (ControlHarmed is > 0)
        {
            return PotTestVerdict.ControlHarmed;
        }

        if (harmed > 0)
        {
            return PotTestVerdict.Harmed;
        }

        var grown = LeafSets is { } sets ? sets >= least.LeafSets : Days >= least.Days;
        return !grown ? PotTestVerdict.TooEarly
            : Pots < least.Pots || ControlPots < least.Pots ? PotTestVerdict.TooFewPots
            : PotTestVerdict.Clean;
    }
}
