using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;
using Heapwright.Core.Simulation;
using UnitsNet;

namespace Heapwright.Core.Tests.Readings;

/// <summary>Entries of one heap, by hours since it was built.</summary>
internal static class Entries
{
    public static readonly DateTimeOffset Built = new(2026, 5, 1, 9, 0, 0, TimeSpan.FromHours(1));

    private static readonly Guid Heap = new("11111111-0000-4000-8000-000000000001");

    public static Guid Id(int number) => new($"00000000-0000-4000-8000-{number:000000000000}");

    public static TemperatureEntry Read(
        int number,
        double hours,
        double celsius,
        ProbeSpot spot = ProbeSpot.Core
    ) =>
        new()
        {
            Id = Id(number),
            HeapId = Heap,
            At = Built.AddHours(hours),
            ReceivedAt = Built.AddHours(hours),
            Way = EntryWay.Page,
            Temperature = Temperature.FromDegreesCelsius(celsius),
            Spot = spot,
        };

    public static TemperatureEntry ReadF(int number, double hours, double fahrenheit) =>
        Read(number, hours, 0) with
        {
            Temperature = Temperature.FromDegreesFahrenheit(fahrenheit),
            GivenInFahrenheit = true,
        };

    public static EventEntry Turn(int number, double hours) =>
        new()
        {
            Id = Id(number),
            HeapId = Heap,
            At = Built.AddHours(hours),
            ReceivedAt = Built.AddHours(hours),
            Way = EntryWay.Page,
            Deed = new TurnedDeed(Thoroughness.Fair, TurnedPart.All),
        };

    public static CorrectionEntry Correct(
        int number,
        double hours,
        int corrects,
        double? celsius
    ) =>
        new()
        {
            Id = Id(number),
            HeapId = Heap,
            At = Built.AddHours(hours),
            ReceivedAt = Built.AddHours(hours),
            Way = EntryWay.Page,
            Corrects = Id(corrects),
            Replacement = celsius is { } value ? Read(number, 24, value) : null,
        };
}
