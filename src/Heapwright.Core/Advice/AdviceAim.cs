namespace Heapwright.Core.Advice;

/// <summary>What the person wants of the heap first.</summary>
public enum AdviceAim
{
    /// <summary>That all of it is held hot long enough.</summary>
    SafeHeat,

    /// <summary>That it is done soon.</summary>
    Fast,

    /// <summary>That it keeps its nitrogen.</summary>
    KeepNitrogen,

    /// <summary>That there is little to do.</summary>
    LeastWork,
}
