namespace Heapwright.App.Contract;

/// <summary>What was said beside the record, on the command line or in a form; null where nothing was.</summary>
/// <param name="Process">How the heap is kept.</param>
/// <param name="Country">Whose rules.</param>
/// <param name="Rules">Which rules.</param>
/// <param name="SolidsPercent">Solids, % of wet mass.</param>
public sealed record HygieneOptions(
    string? Process = null,
    string? Country = null,
    IReadOnlyList<string>? Rules = null,
    double? SolidsPercent = null
)
{
    /// <summary>Nothing was said.</summary>
    public static HygieneOptions None { get; } = new();
}
