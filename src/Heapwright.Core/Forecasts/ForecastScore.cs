using System.Collections.Immutable;

namespace Heapwright.Core.Forecasts;

/// <summary>How good forecasts of one lead were, held against the readings that came after them.</summary>
/// <param name="FromDays">More than so many days ahead.</param>
/// <param name="ToDays">At most so many days ahead.</param>
/// <param name="Readings">How many readings there were.</param>
/// <param name="MedianMissKelvins">Half of the readings lie nearer to the middle than this, K; NaN for too few.</param>
/// <param name="HalfPercent">How many lie where half were expected, %; NaN for too few.</param>
/// <param name="NineTenthsPercent">How many lie where nine in ten were expected, %; NaN for too few.</param>
public sealed record ForecastScore(
    double FromDays,
    double ToDays,
    int Readings,
    double MedianMissKelvins,
    double HalfPercent,
    double NineTenthsPercent
)
{
    /// <summary>Below so many readings nothing is told.</summary>
    public const int FewestReadings = 5;

    /// <summary>The leads that are told apart, days.</summary>
    public static ImmutableArray<(double From, double To)> Leads { get; } =
    [(0, 1.5), (1.5, 3.5), (3.5, 6.5), (6.5, 10)];

    /// <summary>Whether there are readings enough to tell.</summary>
    public bool CanTell => Readings >= FewestReadings;

    /// <summary>The scores of all leads.</summary>
    /// <param name="misses">Readings against forecasts, in any order.</param>
    /// <returns>One for each of <see cref="Leads"/>.</returns>
    public static ImmutableArray<ForecastScore> Of(IEnumerable<ForecastMiss> misses)
    {
        var all = misses.ToArray();
        return [.. Leads.Select(lead => Of(lead, all))];
    }

    private static ForecastScore Of((double From, double To) lead, ForecastMiss[] all)
    {
        var mine = all.Where(m => m.AheadDays > lead.From && m.AheadDays <= lead.To).ToArray();
        if (mine.Length < FewestReadings)
        {
            return new ForecastScore(
                lead.From,
                lead.To,
                mine.Length,
                double.NaN,
                double.NaN,
                double.NaN
            );
        }

        double[] sorted = [.. mine.Select(m => m.Kelvins).Order()];
        var middle = sorted.Length / 2;
        var median =
            sorted.Length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
        return new ForecastScore(
            lead.From,
            lead.To,
            mine.Length,
            median,
            100.0 * mine.Count(m => m.IsInHalf) / mine.Length,
            100.0 * mine.Count(m => m.IsInNineTenths) / mine.Length
        );
    }
}
