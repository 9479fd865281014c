using System.Collections.Immutable;

namespace Heapwright.Core.Hygiene;

/// <summary>
/// The dose of heat of a record: the sum of dt/D(t) of 40 CFR 503.32(a)(3) over the times between readings, the colder of
/// two neighbouring readings counting for the whole time between them, and never over a gap. Adding up fractions is our
/// choice; the rule itself speaks of one temperature kept for one time.
/// </summary>
public static class HeatDose
{
    /// <summary>The dose at every probe.</summary>
    /// <param name="log">The record.</param>
    /// <param name="formulas">The equations of the rule.</param>
    /// <param name="solidsPercent">Solids, % of wet mass; null if unknown.</param>
    public static ImmutableArray<ProbeDose> Of(
        HeatLog log,
        IEnumerable<DoseFormula> formulas,
        double? solidsPercent
    )
    {
        ArgumentNullException.ThrowIfNull(log);
        DoseFormula[] fitting = [.. formulas.Where(f => f.IsFor(solidsPercent))];
        return [.. log.Probes.Select((_, p) => OfProbe(log, p, fitting))];
    }

    private static ProbeDose OfProbe(HeatLog log, int probe, DoseFormula[] formulas)
    {
        var own = log.ByProbe[probe];
        var band = new HeatBand(formulas.Min(f => f.LowestCelsius));
        var (dose, hours, gaps) = (0.0, 0.0, 0.0);
        foreach (var (from, to) in new[] { (log.First, own[0].Moment), (own[^1].Moment, log.Last) })
        {
            gaps += HeatLog.IsGap(from, to) ? to.Hours - from.Hours : 0;
        }

        var begun = 0;
        for (var i = 1; i <= own.Length; i++)
        {
            var gap = i < own.Length && HeatLog.IsGap(own[i - 1].Moment, own[i].Moment);
            gaps += gap ? own[i].Hours - own[i - 1].Hours : 0;
            if (
                i < own.Length
                && !gap
                && band.Holds(own[i - 1].Celsius)
                && band.Holds(own[i].Celsius)
            )
            {
                continue;
            }

            var spell = own[i - 1].Hours - own[begun].Hours;
            if (spell > 0 && Array.Find(formulas, f => f.IsForSpell(spell)) is { } formula)
            {
                hours += spell;
                for (var k = begun + 1; k < i; k++)
                {
                    var colder = Math.Min(own[k - 1].Celsius, own[k].Celsius);
                    dose += (own[k].Hours - own[k - 1].Hours) / 24 / formula.DaysAt(colder);
                }
            }

            begun = i;
        }

        return new ProbeDose(log.Probes[probe], dose, hours, gaps);
    }
}
