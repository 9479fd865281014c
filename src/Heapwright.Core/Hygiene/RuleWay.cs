namespace Heapwright.Core.Hygiene;

/// <summary>One way to read a rule, and what comes of it.</summary>
/// <param name="Count">How days are counted.</param>
/// <param name="FollowsOn">Whether the days must follow one another.</param>
/// <param name="LateTurn">Whether a turn on the day after the period counts too.</param>
/// <param name="Days">The days of the period that was counted; of the longest where none is enough.</param>
/// <param name="Turns">The turns that count for it; null where nothing is said of turns or none are asked for.</param>
/// <param name="Verdict">Met, not met or cannot tell.</param>
public sealed record RuleWay(
    DayCount Count,
    bool FollowsOn,
    bool LateTurn,
    double Days,
    int? Turns,
    RuleVerdict Verdict
);
