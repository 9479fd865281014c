using Heapwright.App.Diary;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;
using Heapwright.Core.Simulation;
using UnitsNet;

namespace Heapwright.Storage.Tests.Diary;

/// <summary>Entries of the heap in <see cref="Things"/>, by days since it was built.</summary>
internal static class Entries
{
    public static Guid HeapId => Things.Heap.Id;

    public static DateTimeOffset At(double day) =>
        Things.Heap.BuiltAt.ToDateTimeOffset().AddDays(day);

    public static Guid Id(int number) => new($"00000000-0000-4000-9000-{number:000000000000}");

    public static TemperatureEntry Read(int number, double day, double celsius) =>
        new()
        {
            Id = Id(number),
            HeapId = HeapId,
            At = At(day),
            Zone = "Europe/London",
            ReceivedAt = At(day),
            Way = EntryWay.Http,
            Temperature = Temperature.FromDegreesCelsius(celsius),
            Depth = Length.FromCentimeters(45),
            Instrument = "long dial",
        };

    public static EventEntry Turn(int number, double day) =>
        new()
        {
            Id = Id(number),
            HeapId = HeapId,
            At = At(day),
            ReceivedAt = At(day),
            Way = EntryWay.Page,
            Deed = new TurnedDeed(Thoroughness.Good, TurnedPart.OutsideIn),
        };

    public static JudgedEntry Judged(DiaryEntry entry) =>
        new(entry, entry is TemperatureEntry ? PlausibilityVerdict.Fine : null);
}
