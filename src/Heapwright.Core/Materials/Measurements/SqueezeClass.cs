namespace Heapwright.Core.Materials.Measurements;

/// <summary>How a material gives up its water in the fist.</summary>
public enum SqueezeClass
{
    /// <summary>Chips, stalks and other coarse stuff: little surface to hold water.</summary>
    Coarse,

    /// <summary>Dead leaves, straw, paper: holds much water before it drips.</summary>
    Leafy,

    /// <summary>Manure, grounds, compost, sawdust: drips early when dense.</summary>
    Fine,

    /// <summary>Fresh plants: the water is inside the cells, and the fist says little about it.</summary>
    Living,
}
