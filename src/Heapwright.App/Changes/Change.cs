namespace Heapwright.App.Changes;

/// <summary>One thing as it was and as it is after an act.</summary>
/// <param name="Kind">The kind of thing, such as <c>stock</c>; see <see cref="Sites.ItemKinds"/>.</param>
/// <param name="ItemId">Which thing.</param>
/// <param name="Before">As it was, in JSON; null where it was not there.</param>
/// <param name="After">As it is now, in JSON; null where it is there no longer.</param>
public sealed record Change(string Kind, Guid ItemId, string? Before, string? After);
