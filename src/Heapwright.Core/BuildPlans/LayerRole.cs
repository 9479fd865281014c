namespace Heapwright.Core.BuildPlans;

/// <summary>What a layer is for.</summary>
public enum LayerRole
{
    /// <summary>Coarse stuff on the ground that lets air in from below.</summary>
    Base,

    /// <summary>A dusting of soil or old compost.</summary>
    Soil,

    /// <summary>The lower half of a pair: browns and stiff stuff.</summary>
    Brown,

    /// <summary>The upper half of a pair: greens.</summary>
    Green,

    /// <summary>Both halves of a pair, forked together as they are laid.</summary>
    Pair,

    /// <summary>Kitchen scraps in the middle, with the other stuff of the layer around them.</summary>
    Kitchen,

    /// <summary>One stuff alone, laid in several layers.</summary>
    Alone,

    /// <summary>The brown coat on top.</summary>
    Cover,
}
