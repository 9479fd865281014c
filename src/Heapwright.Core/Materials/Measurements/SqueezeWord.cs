namespace Heapwright.Core.Materials.Measurements;

/// <summary>What a handful does when squeezed hard, from dry to wet.</summary>
public enum SqueezeWord
{
    /// <summary>It crumbles to dust and feels dry.</summary>
    Dust,

    /// <summary>It springs apart; the hand stays dry.</summary>
    Dry,

    /// <summary>It holds together like a wrung-out sponge; the hand is damp, at most a drop or two.</summary>
    Sponge,

    /// <summary>Drops run between the fingers.</summary>
    Drips,

    /// <summary>Water streams out.</summary>
    Streams,
}
