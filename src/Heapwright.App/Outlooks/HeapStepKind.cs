namespace Heapwright.App.Outlooks;

/// <summary>What a heap asks of who looks after it.</summary>
public enum HeapStepKind
{
    /// <summary>Keep away: smoke or char was noted, or it may burn.</summary>
    KeepAway,

    /// <summary>It is too hot: let heat out.</summary>
    LetHeatOut,

    /// <summary>Read a test that was begun.</summary>
    ReadTest,

    /// <summary>Take a reading.</summary>
    Read,

    /// <summary>Wait until what was noted last has been worked out.</summary>
    Thinking,

    /// <summary>Do what the forecast advises.</summary>
    Do,

    /// <summary>Say whether it helped what was done after the signs.</summary>
    SayHelped,

    /// <summary>Leave it shut.</summary>
    Leave,

    /// <summary>Ask whether it is done.</summary>
    CheckDone,
}
