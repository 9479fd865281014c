namespace Heapwright.App.Sites;

/// <summary>What an import would do with one kind of thing.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="New">Not here yet.</param>
/// <param name="Changed">Here, and otherwise than in the file.</param>
/// <param name="Same">Here already just so; the same thing is never doubled.</param>
public sealed record ImportRow(string Kind, int New, int Changed, int Same);
