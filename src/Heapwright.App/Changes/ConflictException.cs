namespace Heapwright.App.Changes;

/// <summary>A thing is no longer as it was when the change was prepared; nothing was changed.</summary>
public sealed class ConflictException : Exception
{
    /// <summary>A conflict over one thing.</summary>
    /// <param name="kind">The kind of thing.</param>
    /// <param name="id">Which thing.</param>
    public ConflictException(string kind, Guid id)
        : base($"the {kind} {id:D} was changed meanwhile; nothing was written") { }
}
