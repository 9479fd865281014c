namespace Heapwright.Core.Materials.Measurements;

/// <summary>How a bucket was filled before it was weighed; the same stuff gives different densities.</summary>
public enum FillingMethod
{
    /// <summary>Tipped in loose and struck off level: the density the library means.</summary>
    Loose,

    /// <summary>
    /// A third, five taps; a second third, five taps; to the brim, no tap. Source: Zabaleta, after Cooperband 2002 (printed).
    /// </summary>
    ThreeTaps,

    /// <summary>
    /// Dropped ten times from 15 cm after each third, then topped up without dropping. Source: Coker, Carolina Compost
    /// Council (printed).
    /// </summary>
    Dropped,

    /// <summary>
    /// Dropped ten times from 30 cm after each third and after filling, then refilled to the line without dropping.
    /// Source: WSU Puyallup (printed).
    /// </summary>
    DroppedAndRefilled,
}
