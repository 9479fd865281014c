namespace Heapwright.Core.Lessons;

/// <summary>In what two heaps can differ; what belongs together is one kind.</summary>
public enum DifferenceKind
{
    /// <summary>Materials by their share of the dry mass, and what follows of them.</summary>
    Materials,

    /// <summary>Moisture as built.</summary>
    Moisture,

    /// <summary>How much it was, and the bin.</summary>
    Size,

    /// <summary>Walls and cover.</summary>
    Enclosure,

    /// <summary>Temperature of the matter when built.</summary>
    Start,

    /// <summary>The air round it.</summary>
    Weather,

    /// <summary>Turns.</summary>
    Turns,

    /// <summary>Water poured on later.</summary>
    Water,

    /// <summary>What was added later.</summary>
    Additions,
}
