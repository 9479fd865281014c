namespace Heapwright.Core.FinishedCompost;

/// <summary>What a test in pots shows.</summary>
public enum PotTestVerdict
{
    /// <summary>Leaves are harmed in the compost and not in the control.</summary>
    Harmed,

    /// <summary>No harm, grown for long enough, in pots enough.</summary>
    Clean,

    /// <summary>No harm yet, but not grown for long enough.</summary>
    TooEarly,

    /// <summary>No harm, but in too few pots.</summary>
    TooFewPots,

    /// <summary>The control is harmed too: it shows nothing.</summary>
    ControlHarmed,

    /// <summary>Harm, but no control beside it: it may have another cause.</summary>
    NoControl,
}
