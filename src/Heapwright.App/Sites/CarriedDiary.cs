using System.Collections.Immutable;
using System.Text.Json;

namespace Heapwright.App.Sites;

/// <summary>The diary of one heap as a file carries it.</summary>
/// <param name="HeapId">The heap.</param>
/// <param name="Head">The hash of the last entry, which stands for all before it.</param>
/// <param name="Entries">The entries as they are chained, from the first on.</param>
public sealed record CarriedDiary(Guid HeapId, string Head, ImmutableArray<JsonElement> Entries);
