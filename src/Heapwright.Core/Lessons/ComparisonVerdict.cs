namespace Heapwright.Core.Lessons;

/// <summary>Whether a difference is more than chance.</summary>
public enum ComparisonVerdict
{
    /// <summary>Nine in ten of what chance alone would do lie nearer.</summary>
    MoreThanChance,

    /// <summary>It may be chance, or too little was read.</summary>
    CannotTell,

    /// <summary>Nothing was changed, so there is nothing to tell.</summary>
    NothingChanged,
}
