namespace Heapwright.App.Drawings;

/// <summary>How a class of material is drawn; each can be told from the others in black and white.</summary>
public enum PatternKind
{
    /// <summary>Chips, twigs, prunings.</summary>
    Chips,

    /// <summary>Straw, hay, dry stalks.</summary>
    Straw,

    /// <summary>Leaves.</summary>
    Leaves,

    /// <summary>Grass clippings.</summary>
    Grass,

    /// <summary>Other green plants.</summary>
    Green,

    /// <summary>Kitchen scraps and fruit.</summary>
    Scraps,

    /// <summary>Manure, with or without bedding.</summary>
    Manure,

    /// <summary>Soil, compost, ash.</summary>
    Soil,

    /// <summary>Paper and card.</summary>
    Paper,

    /// <summary>Fine stuff: sawdust, coffee grounds, meals.</summary>
    Fine,
}
