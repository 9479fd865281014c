using Heapwright.Core.Reasons;
using UnitsNet;

namespace Heapwright.Core.Readings;

/// <summary>
/// Whether a temperature can be what the heap had. The limits are our own estimates from common practice, no source: they
/// are wide, since a reading that is doubted wrongly is a reading that is not trusted.
/// </summary>
public static class Plausibility
{
    /// <summary>Above this a heap that holds water boils it; °C.</summary>
    public const double BoilingC = 100;

    /// <summary>Above this composting organisms have stopped; what is hotter heats itself by other ways; °C.</summary>
    public const double HottestAliveC = 82;

    /// <summary>Below this no heap has been measured that anyone still reads; broken probes show −40; °C.</summary>
    public const double ColdestC = -30;

    /// <summary>The jump allowed between two readings at one spot, however short the time between them: another hole; °C.</summary>
    public const double FreeJumpC = 12;

    /// <summary>What a heap can gain beyond that, °C for each hour.</summary>
    public const double GainCPerHour = 2.5;

    /// <summary>What a heap can lose beyond that, °C for each hour, when nothing is done to it.</summary>
    public const double LossCPerHour = 1.2;

    /// <summary>How much colder than the air a heap can be: it keeps the cold of the night; °C.</summary>
    public const double ColderThanAirC = 10;

    private const double LostInADayC = 25;
    private const double WarmC = 35;
    private const int StuckReadings = 4;

    // Readings further apart say nothing about each other.
    private static readonly TimeSpan Related = TimeSpan.FromDays(4);
    private static readonly TimeSpan Day = TimeSpan.FromHours(24);
    private static readonly TimeSpan StuckFor = TimeSpan.FromDays(3);
    private static readonly TimeSpan Ahead = TimeSpan.FromMinutes(15);

    /// <summary>The farthest back an entry matters to the verdict on a reading.</summary>
    public static TimeSpan Memory { get; } = TimeSpan.FromDays(5);

    /// <summary>The verdict on a reading.</summary>
    /// <param name="reading">The reading.</param>
    /// <param name="history">What was known of the heap; the reading itself is not in it.</param>
    public static PlausibilityVerdict Judge(TemperatureEntry reading, ReadingHistory history)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(history);
        var last =
            history.LastBefore(reading.Spot, reading.At) is { } before
            && reading.At - before.At <= Related
                ? before
                : null;
        if (Meant(reading, last, history) is { } meant)
        {
            return new PlausibilityVerdict(
                PlausibilityStatus.Asks,
                [
                    Reason.Of(
                        reading.GivenInFahrenheit
                            ? "readings.perhaps_celsius"
                            : "readings.perhaps_fahrenheit",
                        Typed(reading),
                        meant
                    ),
                ],
                meant
            );
        }

        var celsius = reading.Temperature.DegreesCelsius;
        if (celsius is < ColdestC or > BoilingC)
        {
            return new PlausibilityVerdict(
                PlausibilityStatus.Impossible,
                [
                    Reason.Of(
                        "readings.not_of_a_heap",
                        reading.Temperature,
                        Temperature.FromDegreesCelsius(ColdestC),
                        Temperature.FromDegreesCelsius(BoilingC)
                    ),
                ]
            );
        }

        Reason[] doubts = [.. Doubts(reading, last, history)];
        return doubts.Length == 0
            ? PlausibilityVerdict.Fine
            : new PlausibilityVerdict(
                Falls(reading, last, history)
                    ? PlausibilityStatus.Impossible
                    : PlausibilityStatus.Doubtful,
                [.. doubts]
            );
    }

    private static IEnumerable<Reason> Doubts(
        TemperatureEntry reading,
        TemperatureEntry? last,
        ReadingHistory history
    )
    {
        if (reading.Temperature.DegreesCelsius > HottestAliveC)
        {
            yield return Reason.Of("readings.very_hot", reading.Temperature);
        }

        if (reading.At > reading.ReceivedAt + Ahead)
        {
            yield return Reason.Of("readings.ahead_of_time");
        }

        if (history.BuiltAt is { } built && reading.At < built)
        {
            yield return Reason.Of("readings.before_built");
        }

        if (last is not null && Jumps(reading, last, history))
        {
            yield return Reason.Of(
                "readings.jump",
                last.Temperature,
                reading.Temperature,
                Math.Round((reading.At - last.At).TotalHours, 1)
            );
        }

        if (ColderThanAir(reading))
        {
            yield return Reason.Of(
                "readings.colder_than_air",
                reading.Temperature,
                reading.Air!.Value
            );
        }

        if (Stuck(reading, history) is { } stuck)
        {
            yield return stuck;
        }
    }

    private static bool Jumps(
        TemperatureEntry reading,
        TemperatureEntry last,
        ReadingHistory history
    )
    {
        if (history.WasDisturbed(last.At, reading.At))
        {
            return false;
        }

        var hours = (reading.At - last.At).TotalHours;
        var change = reading.Temperature.DegreesCelsius - last.Temperature.DegreesCelsius;
        return change > FreeJumpC + (GainCPerHour * hours)
            || -change > FreeJumpC + (LossCPerHour * hours);
    }

    private static bool ColderThanAir(TemperatureEntry reading) =>
        reading.Air is { } air
        && reading.Temperature.DegreesCelsius < air.DegreesCelsius - ColderThanAirC;

    // Left alone, no heap loses so much in a day and ends below the air: the probe is not in it, or is broken.
    private static bool Falls(
        TemperatureEntry reading,
        TemperatureEntry? last,
        ReadingHistory history
    ) =>
        last is not null
        && ColderThanAir(reading)
        && reading.At - last.At <= Day
        && last.Temperature.DegreesCelsius - reading.Temperature.DegreesCelsius > LostInADayC
        && !history.WasDisturbed(last.At, reading.At);

    // Warm heaps never stand still for days, and no heap does through a turn.
    private static Reason? Stuck(TemperatureEntry reading, ReadingHistory history)
    {
        if (
            history.SameBefore(reading) is not var (since, count)
            || count + 1 < StuckReadings
            || (
                reading.Temperature.DegreesCelsius < WarmC
                && !history.WasDisturbed(since, reading.At)
            )
        )
        {
            return null;
        }

        var span = reading.At - since;
        return span >= StuckFor
            ? Reason.Of(
                "readings.stuck",
                reading.Temperature,
                count + 1,
                Math.Floor(span.TotalDays)
            )
            : null;
    }

    // What was meant if the other unit was meant; null where there is no reason to think so.
    private static Temperature? Meant(
        TemperatureEntry reading,
        TemperatureEntry? last,
        ReadingHistory history
    )
    {
        var celsius = reading.Temperature.DegreesCelsius;
        if (!reading.GivenInFahrenheit)
        {
            // 85 to 180 as °F is 29 to 82 °C; hotter heaps than 82 °C are a matter for fire, not for units.
            var fahrenheit = Temperature.FromDegreesFahrenheit(celsius);
            return
                celsius is > HottestAliveC and <= 180
                && !(celsius <= BoilingC && last is not null && Near(last, celsius))
                ? Temperature.FromDegreesCelsius(fahrenheit.DegreesCelsius)
                : null;
        }

        var typed = reading.Temperature.DegreesFahrenheit;
        if (typed is < 30 or > 80)
        {
            return null;
        }

        var asCelsius = Temperature.FromDegreesCelsius(Math.Round(typed, 6));
        if (last is not null)
        {
            return Jumps(reading, last, history) && Near(last, typed) ? asCelsius : null;
        }

        // Nothing to hold it against: a cold heap in its first day is usual, later one that is at 40 to 75 is.
        return
            history.BuiltAt is { } built
            && reading.At - built > TimeSpan.FromDays(1)
            && reading.At - built < TimeSpan.FromDays(30)
            && typed is >= 40 and <= 75
            ? asCelsius
            : null;
    }

    private static bool Near(TemperatureEntry last, double celsius) =>
        Math.Abs(last.Temperature.DegreesCelsius - celsius) <= FreeJumpC;

    private static string Typed(TemperatureEntry reading) =>
        string.Create(
            System.Globalization.CultureInfo.InvariantCulture,
            $"{(reading.GivenInFahrenheit ? reading.Temperature.DegreesFahrenheit : reading.Temperature.DegreesCelsius):0.#}"
        );
}
