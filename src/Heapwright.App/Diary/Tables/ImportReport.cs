using System.Collections.Immutable;

namespace Heapwright.App.Diary.Tables;

/// <summary>What became of a table.</summary>
/// <param name="Rows">The rows that were read, the header not counted.</param>
/// <param name="Kept">Entries that are new.</param>
/// <param name="AlreadyThere">Entries that were there already.</param>
/// <param name="Doubted">Readings among the new ones that are doubted or asked about; they are kept.</param>
/// <param name="Refused">The rows that were not taken.</param>
/// <param name="FirstRefused">The first of them.</param>
public sealed record ImportReport(
    long Rows,
    long Kept,
    long AlreadyThere,
    long Doubted,
    long Refused,
    ImmutableArray<RefusedRow> FirstRefused
);
