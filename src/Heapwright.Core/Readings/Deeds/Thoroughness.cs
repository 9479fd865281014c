namespace Heapwright.Core.Readings.Deeds;

/// <summary>How well a turn mixed.</summary>
public enum Thoroughness
{
    /// <summary>Lifted and loosened more than mixed.</summary>
    Poor,

    /// <summary>As most people turn.</summary>
    Fair,

    /// <summary>Taken apart and put together anew.</summary>
    Good,
}
