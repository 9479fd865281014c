using System.Collections.Immutable;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.FinishedCompost;

/// <summary>The self-heating test: damp compost in a vacuum flask, its highest temperature over that of the room.</summary>
public sealed record SelfHeatingTest
{
    /// <summary>The readings in the order of time.</summary>
    public ImmutableArray<SelfHeatingReading> Readings { get; init; } = [];

    /// <summary>The temperature of the room, °C, where the readings have none of their own.</summary>
    public Spread? RoomCelsius { get; init; }

    /// <summary>The highest temperature, °C, where no readings were kept.</summary>
    public Spread? HighestCelsius { get; init; }

    /// <summary>The highest rise over the room, K, where it was worked out already.</summary>
    public Spread? GivenRise { get; init; }

    /// <summary>The highest rise over the room, K, never below 0; null where nothing says so.</summary>
    public Spread? Rise
    {
        get
        {
            if (GivenRise is { } given)
            {
                return Least(given);
            }

            Spread? highest = null;
            foreach (var reading in Readings)
            {
                var rise = reading.RoomCelsius is { } room
                    ? Spread.Exact(reading.Celsius - room)
                    : Above(Spread.Exact(reading.Celsius));
                highest =
                    rise is { } r && (highest is not { } h || r.Typical > h.Typical) ? r : highest;
            }

            highest ??= HighestCelsius is { } one ? Above(one) : null;
            return highest is { } found ? Least(found) : null;
        }
    }

    /// <summary>Days from the first reading to the last.</summary>
    public double Days => Readings.Length == 0 ? 0 : Readings[^1].Day - Readings[0].Day;

    /// <summary>Whether the last reading is the highest, so that the test was stopped while it still rose.</summary>
    public bool StillRising =>
        Readings.Length > 1
        && Over(Readings[^1]) >= Readings.Max(Over)
        && Over(Readings[^1]) > Over(Readings[^2]);

    /// <summary>Whether the first reading is the highest: it went in warm, or only cooled.</summary>
    public bool OnlyFell =>
        Readings.Length > 1 && Readings.Skip(1).All(r => Over(r) < Over(Readings[0]));

    private static double Over(SelfHeatingReading reading) =>
        reading.Celsius - (reading.RoomCelsius ?? 0);

    private Spread? Above(Spread temperature) =>
        RoomCelsius is { } room
            ? Spread.Of(
                temperature.Low - room.High,
                temperature.Typical - room.Typical,
                temperature.High - room.Low
            )
            : null;

    private static Spread Least(Spread rise) =>
        Spread.Of(Math.Max(0, rise.Low), Math.Max(0, rise.Typical), Math.Max(0, rise.High));
}
