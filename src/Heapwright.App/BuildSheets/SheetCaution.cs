namespace Heapwright.App.BuildSheets;

/// <summary>One caution of a sheet.</summary>
/// <param name="Id">Its code, such as <c>raw_manure</c>.</param>
/// <param name="Text">What to do.</param>
/// <param name="Why">Why.</param>
public sealed record SheetCaution(string Id, string Text, string Why);
