using Heapwright.Core.Mixtures;

namespace Heapwright.Core.BuildPlans;

/// <summary>Shares out the water: to each stuff what it needs to become as damp as the aim, and so to the layers.</summary>
internal static class WaterShares
{
    /// <summary>The moisture to which dry stuff is brought, % of wet mass: the middle of the aim for this mixture.</summary>
    public static double Target(Mixture mixture)
    {
        var aim = Verdict.MoistureAim(mixture);
        return ((aim.Low ?? 50) + (aim.High ?? 60)) / 2;
    }

    /// <summary>At least this share of what the dry stuff needs is given, however wet the rest is: an estimate.</summary>
    private const double LeastShareOfNeed = 1.0 / 3;

    /// <summary>
    /// Litres to add where the asker named none: what the dry stuff needs to reach the target, but no more than
    /// brings the whole to the upper end of its aim, since wet greens share their water with dry browns.
    /// </summary>
    public static double Usual(IEnumerable<Stuff> stuffs, Mixture dry, double target)
    {
        var need = stuffs.Sum(s => s.WaterNeed(target) * s.Amount);
        var matter = dry.Typical.Matter;
        var room = ClosedForms.WaterForMoisture(
            matter.WetMass,
            matter.Water,
            Verdict.MoistureAim(dry).High ?? 60
        );
        return Math.Round(Math.Max(LeastShareOfNeed * need, Math.Min(need, room)));
    }

    /// <summary>
    /// Litres for each layer, in proportion to what the dry stuff in it needs; if nothing is dry, to its volume. Whole
    /// or half litres but for one layer, and exactly the total.
    /// </summary>
    public static double[] Of(IReadOnlyList<Draft> drafts, double total, double target)
    {
        var need = drafts
            .Select(d => d.Parts.Sum(p => p.Stuff.WaterNeed(target) * p.Amount))
            .ToArray();
        if (need.Sum() <= 0)
        {
            need = [.. drafts.Select(d => d.Litres)];
        }

        return InSteps(need, total);
    }

    private static double[] InSteps(double[] need, double total)
    {
        var shares = new double[need.Length];
        var sum = need.Sum();
        if (total <= 0 || sum <= 0)
        {
            return shares;
        }

        // A drop is not worth sharing: it goes where most is wanting.
        if (total < 1)
        {
            shares[Array.IndexOf(need, need.Max())] = total;
            return shares;
        }

        var step = total >= 40 ? 1 : 0.5;
        double before = 0;
        double said = 0;
        var last = 0;
        for (var i = 0; i < need.Length; i++)
        {
            before += need[i];
            var upTo = step * Math.Round(total * before / sum / step);
            shares[i] = Math.Max(0, Math.Min(upTo, step * Math.Floor(total / step)) - said);
            said += shares[i];
            last = shares[i] > 0 ? i : last;
        }

        shares[last] += total - said;
        return shares;
    }
}
