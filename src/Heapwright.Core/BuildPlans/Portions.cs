namespace Heapwright.Core.BuildPlans;

/// <summary>
/// Splits an amount into numbers a person can measure: wholes, halves and quarters of a container, or round numbers
/// of a unit of mass or volume. The portions add up to the amount exactly.
/// </summary>
internal static class Portions
{
    /// <summary>The step in which an amount is split.</summary>
    /// <param name="stuff">The stuff.</param>
    /// <param name="amount">What is split, in its unit.</param>
    /// <param name="slots">Over how many layers.</param>
    /// <param name="mostLitres">The most litres that one layer may take.</param>
    public static decimal Step(Stuff stuff, double amount, int slots, double mostLitres)
    {
        if (!stuff.Ingredient.Unit.WholeByDefault)
        {
            return RoundStep(amount / (4 * Math.Max(slots, 1)));
        }

        var litres = stuff.PerUnit.LooseVolume;
        var step =
            amount >= 2 * slots && litres <= mostLitres / 2 ? 1m
            : amount >= slots && litres / 2 <= mostLitres / 2 ? 0.5m
            : 0.25m;

        return Smaller(step, litres, mostLitres);
    }

    /// <summary>The finest step in which a person would measure it.</summary>
    public static decimal FineStep(Stuff stuff, double amount, double mostLitres) =>
        stuff.Ingredient.Unit.WholeByDefault
            ? Smaller(0.25m, stuff.PerUnit.LooseVolume, mostLitres)
            : RoundStep(amount / 16);

    /// <summary>Splits an amount so that each slot comes as near to its target as the steps allow.</summary>
    /// <param name="amount">What is split, in the unit.</param>
    /// <param name="step">The step, in the unit.</param>
    /// <param name="litresPerUnit">Litres of one unit.</param>
    /// <param name="wanted">Litres each slot still wants; lowered by what it gets.</param>
    /// <returns>Amounts, one a slot; their sum is the amount.</returns>
    public static double[] Spread(
        double amount,
        decimal step,
        double litresPerUnit,
        double[] wanted
    )
    {
        var parts = new double[wanted.Length];
        var steps = new long[wanted.Length];
        var whole = (long)Math.Floor((amount / (double)step) + 1e-9);
        var dealt = DealMany(whole, (double)step * litresPerUnit, wanted, steps);
        for (var i = dealt; i < whole; i++)
        {
            var slot = Neediest(wanted);
            steps[slot]++;
            wanted[slot] -= (double)step * litresPerUnit;
        }

        double given = 0;
        var last = -1;
        for (var i = 0; i < parts.Length; i++)
        {
            parts[i] = (double)(step * steps[i]);
            given += parts[i];
            last = steps[i] > 0 ? i : last;
        }

        // What is left below one step goes where most is wanting; a rounding rest below a millionth joins a portion.
        var rest = amount - given;
        if (rest != 0)
        {
            var small = Math.Abs(rest) < 1e-6 * amount && last >= 0;
            var slot = small ? last : Neediest(wanted);
            parts[slot] += rest;
            wanted[slot] -= rest * litresPerUnit;
        }

        return parts;
    }

    /// <summary>
    /// An amount for a base or cover: just above the target, or just below it where a step more would be half as
    /// thick again; all there is where little would be left.
    /// </summary>
    public static double Coat(double target, double available, decimal step)
    {
        if (available <= target * 1.25)
        {
            return available;
        }

        var steps = Math.Max(1, Math.Ceiling(((decimal)target / step) - 0.001m));
        if ((double)(steps * step) > 1.3 * target && steps > 1)
        {
            steps--;
        }

        return Math.Min(available, (double)(steps * step));
    }

    /// <summary>The largest of 1, 2 and 5 times a power of ten that is not above a number.</summary>
    public static decimal RoundStep(double most)
    {
        var power = (decimal)Math.Pow(10, Math.Clamp(Math.Floor(Math.Log10(most)), -9, 9));
        var lead = (decimal)most / power;
        return power
            * (
                lead >= 5 ? 5
                : lead >= 2 ? 2
                : 1
            );
    }

    // Thousands of steps are dealt in proportion at once, all but the last few.
    private static long DealMany(long whole, double stepLitres, double[] wanted, long[] steps)
    {
        var sum = wanted.Sum(w => Math.Max(0, w));
        if (whole < 100L * wanted.Length || sum <= 0)
        {
            return 0;
        }

        long dealt = 0;
        for (var i = 0; i < wanted.Length; i++)
        {
            steps[i] = (long)Math.Floor((whole - wanted.Length) * Math.Max(0, wanted[i]) / sum);
            wanted[i] -= steps[i] * stepLitres;
            dealt += steps[i];
        }

        return dealt;
    }

    // A quarter of a trailer is still too much for a layer: only then are there smaller parts.
    private static decimal Smaller(decimal step, double litres, double mostLitres)
    {
        while ((double)step * litres > 0.8 * mostLitres && step > 0.001m)
        {
            step /= 2;
        }

        return step;
    }

    private static int Neediest(double[] wanted)
    {
        var best = 0;
        for (var i = 1; i < wanted.Length; i++)
        {
            if (wanted[i] > wanted[best] + 1e-9)
            {
                best = i;
            }
        }

        return best;
    }
}
