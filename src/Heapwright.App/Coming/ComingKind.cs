namespace Heapwright.App.Coming;

/// <summary>What waits for a day.</summary>
public enum ComingKind
{
    /// <summary>A test that was begun is to be read.</summary>
    TestToRead,

    /// <summary>Something at hand spoils.</summary>
    StuffSpoils,

    /// <summary>What was done after reading the signs may have helped by now.</summary>
    DidItHelp,

    /// <summary>The forecast advises to do something.</summary>
    NextStep,

    /// <summary>A heap was begun and is not finished; it waits for no day.</summary>
    HalfBuilt,
}
