using Heapwright.App.Diary;
using Heapwright.App.Sites;

namespace Heapwright.App.Outlooks;

/// <summary>A heap that is followed, where it stands and what it asks.</summary>
/// <param name="Record">The heap with its diary of the last weeks.</param>
/// <param name="Bay">The bay; null where it stands in none of the site's.</param>
/// <param name="Step">The next step.</param>
public sealed record FollowedHeap(HeapRecord Record, Bay? Bay, HeapStep Step);
