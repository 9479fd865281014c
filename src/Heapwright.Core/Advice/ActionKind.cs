namespace Heapwright.Core.Advice;

/// <summary>What can be done with a heap next.</summary>
public enum ActionKind
{
    /// <summary>Nothing, as planned.</summary>
    Wait,

    /// <summary>Turn it, with or without water.</summary>
    Turn,

    /// <summary>Pour water on.</summary>
    Water,

    /// <summary>Turn browns in.</summary>
    AddBrowns,

    /// <summary>Turn greens in.</summary>
    AddGreens,

    /// <summary>Change its cover.</summary>
    Cover,

    /// <summary>Leave out what was to be added in the next week.</summary>
    StopAdding,

    /// <summary>Add nothing more at all.</summary>
    Close,
}
