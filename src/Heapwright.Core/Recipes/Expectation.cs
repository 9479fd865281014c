using Heapwright.Core.Bins;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Simulation;
using UnitsNet;

namespace Heapwright.Core.Recipes;

/// <summary>What to expect of a heap, from its simulation.</summary>
/// <param name="Heats">Whether it will heat, in most cases.</param>
/// <param name="ChanceHot">The share of cases in which the core passes 55 °C.</param>
/// <param name="Over65Likely">Whether the core likely passes 65 °C.</param>
/// <param name="AmmoniaLikely">Whether nitrogen will likely be smelt leaving.</param>
/// <param name="First55Day">Days to 55 °C; null unless it likely gets there.</param>
public sealed record Expectation(
    Heats Heats,
    double ChanceHot,
    bool Over65Likely,
    bool AmmoniaLikely,
    double? First55Day
)
{
    /// <summary>The members simulated.</summary>
    public const int Members = 64;

    /// <summary>The days simulated: what has not heated by then is not called hot.</summary>
    public const double Days = 14;

    private const double Hot = 55;
    private const double Warm = 43;
    private const double Hottest = 65;
    private const double Nothing = 1e-6; // kg dry: less is no heap

    /// <summary>
    /// Simulates the mixture for two weeks in its bin (or a free-standing cube of its volume), behind slats under a
    /// breathable cover, not turned: hot if the core passes 55 °C in at least half of the members, modest from 43 °C.
    /// Ammonia is judged by the ratio, not by the simulation: below 20:1 in half of the cases, or below the fine range
    /// of available carbon. What lies lower than <see cref="Bin.LowestHeap"/> is not simulated: it does not heat.
    /// </summary>
    /// <param name="mixture">The mixture as built, water included.</param>
    /// <param name="question">Bin, air temperature, parameters and seed are used.</param>
    /// <returns>What to expect; Heats.No where the volume is not known.</returns>
    public static Expectation Of(Mixture mixture, RecipeQuestion question)
    {
        ArgumentNullException.ThrowIfNull(mixture);
        ArgumentNullException.ThrowIfNull(question);
        var ammonia =
            mixture.Chance(s =>
                s.CarbonNitrogenRatio < 20
                || s.AvailableCarbonNitrogenRatio < Aims.AvailableCarbonNitrogenFine.Low
            ) >= 0.5;
        if (
            mixture.Typical.Matter.DryMass < Nothing
            || !(mixture.Typical.FilledVolume > 0)
            || mixture.Cases.Any(c => !(c.FilledVolume > 0))
        )
        {
            return new Expectation(Heats.No, 0, false, ammonia, null);
        }

        var volume = HeapSimulation.LooseBuiltVolume(mixture, question.Parameters);
        var bin = question.Bin ?? Cube(volume);
        if (bin.HeightFor(Volume.FromCubicMeters(volume)).Meters < Bin.LowestHeap)
        {
            return new Expectation(Heats.No, 0, false, ammonia, null);
        }

        var run = HeapSimulation.Run(
            new SimulationQuestion
            {
                Bin = bin,
                Mixture = mixture.Question,
                Parameters = question.Parameters,
                Weather = Weather.Steady(
                    new WeatherMoment(question.AirTemperature, 1, 0, 0.7, 0),
                    swing: 5
                ),
                Days = Days,
                Members = Members,
                Seed = question.Seed,
                FollowParcels = false,
            },
            mixture,
            CancellationToken.None
        );
        double ShareAbove(double celsius) =>
            run.Milestones.Average(m => m.PeakCelsius >= celsius ? 1.0 : 0);
        var hot = ShareAbove(Hot);
        var heats =
            hot >= 0.5 ? Heats.Yes
            : ShareAbove(Warm) >= 0.5 ? Heats.Modest
            : Heats.No;
        return new Expectation(
            heats,
            hot,
            ShareAbove(Hottest) >= 0.5,
            ammonia,
            heats == Heats.Yes ? MedianFirst55(run) : null
        );
    }

    // The median over all members, the ones that never get there counted as later than all others.
    private static double MedianFirst55(SimulationAnswer run)
    {
        var days = run
            .Milestones.Select(m =>
                double.IsNaN(m.First55Day) ? double.PositiveInfinity : m.First55Day
            )
            .Order()
            .ToArray();
        return days[(days.Length - 1) / 2];
    }

    private static Bin Cube(double cubicMetres)
    {
        var side = Length.FromMeters(Math.Clamp(Math.Cbrt(cubicMetres), 0.1, 10));
        return Bin.Box(side, side, side);
    }
}
