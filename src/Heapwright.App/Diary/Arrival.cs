using Heapwright.Core.Readings;

namespace Heapwright.App.Diary;

/// <summary>How an entry came.</summary>
/// <param name="HeapId">The heap it is about.</param>
/// <param name="Way">By what way.</param>
/// <param name="At">When.</param>
/// <param name="Zone">The zone of the heap, for an entry that names none.</param>
/// <param name="By">Who sent it, by the name of the device; empty where nobody said.</param>
public sealed record Arrival(
    Guid HeapId,
    EntryWay Way,
    DateTimeOffset At,
    string Zone,
    string By = ""
);
