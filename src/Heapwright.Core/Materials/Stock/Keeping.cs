namespace Heapwright.Core.Materials.Stock;

/// <summary>How stock is kept.</summary>
public enum Keeping
{
    /// <summary>Nobody said: it may have been rained on.</summary>
    Unknown,

    /// <summary>Under a roof, a sheet or a lid.</summary>
    Covered,

    /// <summary>Open to the sky.</summary>
    Open,
}
