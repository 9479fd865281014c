using System.Collections.Immutable;
using Heapwright.Core.Quantities;
using Heapwright.Core.Simulation;

namespace Heapwright.Core.Forecasts;

/// <summary>What is to be expected of a heap, given its readings.</summary>
public sealed record ForecastAnswer
{
    /// <summary>What was asked.</summary>
    public required ForecastQuestion Question { get; init; }

    /// <summary>Shape [time]: days since building, from the present on.</summary>
    public required ImmutableArray<double> Days { get; init; }

    /// <summary>Shape [time][member]: the core, the error of the model included, °C.</summary>
    public required double[][] Core { get; init; }

    /// <summary>Shape [time]: days since building, from the first day to the end of the forecast.</summary>
    public required ImmutableArray<double> CourseDays { get; init; }

    /// <summary>Shape [time][member]: the core from the first day on, as the readings tell it and as it is forecast, °C.</summary>
    public required double[][] Course { get; init; }

    /// <summary>How many readings up to the present there were.</summary>
    public required int ReadingsUsed { get; init; }

    /// <summary>The latest reading against what was expected; null without readings.</summary>
    public required ExpectedReading? Latest { get; init; }

    /// <summary>Parameters before and after, in their units; those first of which the most was learned.</summary>
    public required ImmutableArray<FittedParameter> Fitted { get; init; }

    /// <summary>Moisture of the mixture as built, % of wet mass, before and after.</summary>
    public required (Spread Before, Spread After) BuiltMoisture { get; init; }

    /// <summary>Moisture at the present, % of wet mass.</summary>
    public required Spread MoistureNow { get; init; }

    /// <summary>Shape [member]: when the core next passes 55 °C upwards, days since building; NaN where not in the time followed.</summary>
    public required double[] Reaches55 { get; init; }

    /// <summary>Shape [member]: when the core falls below 55 °C for good within the time followed; NaN where it does not.</summary>
    public required double[] Leaves55 { get; init; }

    /// <summary>Shape [member]: the outcome where everything goes as planned.</summary>
    public required HeapOutcome[] Outcome { get; init; }

    /// <summary>Readings that do not fit with the rest, by their day, °C.</summary>
    public required ImmutableArray<(double Day, double Celsius)> Doubtful { get; init; }

    /// <summary>Why the forecast should not be leant on; empty where it may be.</summary>
    public required ImmutableArray<StaleReason> Stale { get; init; }

    /// <summary>What was learned of the parameters, on the scales of their priors.</summary>
    public ImmutableDictionary<HeapParameter, ParameterScore> Learned =>
        Fitted.ToImmutableDictionary(f => f.Parameter, f => f.Score);

    /// <summary>The fitted heap at the present, and as it goes on as planned.</summary>
    internal (HeapFit Fit, EnsembleRun Planned) Runs { get; init; }

    /// <summary>The zones of the heap.</summary>
    public HeapGrid Grid => Runs.Planned.Grid;

    /// <summary>The inside of the heap at a day, the middle of the members.</summary>
    /// <param name="day">From the first day to the end of the time followed.</param>
    /// <returns>The temperatures of the zones, °C, shape [zone], and the height in the middle, m.</returns>
    public (double[] Celsius, double Height) InsideAt(double day)
    {
        var (before, after, share) = ProbeModel.Between(Runs.Planned.Blocks[0].Looks, day);
        var values = new double[Runs.Planned.Question.Members];
        double Middle(Func<HeapLook, int, double> of)
        {
            for (var i = 0; i < values.Length; i++)
            {
                var (b, lane) = Math.DivRem(i, HeapBlock.Lanes);
                var looks = Runs.Planned.Blocks[b].Looks;
                values[i] =
                    ((1 - share) * of(looks[before], lane)) + (share * of(looks[after], lane));
            }

            Array.Sort(values);
            return values[values.Length / 2];
        }

        var celsius = new double[Grid.Zones];
        for (var z = 0; z < celsius.Length; z++)
        {
            celsius[z] = Middle((look, lane) => look.Celsius[z][lane]);
        }

        return (celsius, Middle((look, lane) => look.Height[lane]));
    }
}
