namespace Heapwright.App.Changes;

/// <summary>An act as the record shows it.</summary>
/// <param name="Act">The act.</param>
/// <param name="CanBeUndone">Whether nothing it changed was changed again since.</param>
/// <param name="WasUndone">Whether a later act takes it back.</param>
public sealed record ActInRecord(Act Act, bool CanBeUndone, bool WasUndone);
