namespace Heapwright.Core.FinishedCompost;

/// <summary>What compost may be used for, from the least demanding to the most.</summary>
public enum CompostUse
{
    /// <summary>Laid on the ground around plants that stand there.</summary>
    Mulch,

    /// <summary>Worked into beds, or laid on them, before sowing or planting.</summary>
    Beds,

    /// <summary>Sieved and brushed into a lawn.</summary>
    Lawn,

    /// <summary>Mixed into the soil of pots.</summary>
    Potting,

    /// <summary>Mixed into what seed is sown in.</summary>
    Seedlings,
}
