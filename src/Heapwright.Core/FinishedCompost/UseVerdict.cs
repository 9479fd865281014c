namespace Heapwright.Core.FinishedCompost;

/// <summary>Whether compost is ready for a use.</summary>
public enum UseVerdict
{
    /// <summary>It is.</summary>
    Yes,

    /// <summary>It is, with care.</summary>
    WithCare,

    /// <summary>Not yet: waiting helps.</summary>
    NotYet,

    /// <summary>No, and waiting does not help.</summary>
    No,

    /// <summary>What is known does not say.</summary>
    CannotTell,
}
