namespace Heapwright.Core.Hygiene;

/// <summary>What a record shows of a rule.</summary>
public enum RuleVerdict
{
    /// <summary>The record shows that it is met, however it is counted.</summary>
    Met,

    /// <summary>It is not met, however it is counted and whatever happened in the gaps.</summary>
    NotMet,

    /// <summary>Gaps in the record leave it open.</summary>
    CannotTell,

    /// <summary>Met by one reading of the rule, not by another.</summary>
    Depends,

    /// <summary>The rule is for another kind of process.</summary>
    NotApplicable,
}
