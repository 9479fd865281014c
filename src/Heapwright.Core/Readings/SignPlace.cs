namespace Heapwright.Core.Readings;

/// <summary>Where in a heap a handful was taken or a hand was held.</summary>
public enum SignPlace
{
    /// <summary>The middle.</summary>
    Core,

    /// <summary>The outer part.</summary>
    Outside,

    /// <summary>Near the ground.</summary>
    Base,
}
