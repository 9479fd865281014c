using Heapwright.Core.Quantities;

namespace Heapwright.Core.Readings;

/// <summary>An entry as it stands after all corrections.</summary>
/// <param name="Entry">What is valid now.</param>
/// <param name="First">The entry as it was first made; the same where nothing was corrected.</param>
/// <param name="Corrections">The corrections of it that count, in the order of their times.</param>
public sealed record StandingEntry(
    DiaryEntry Entry,
    DiaryEntry First,
    EquatableList<CorrectionEntry> Corrections
);
