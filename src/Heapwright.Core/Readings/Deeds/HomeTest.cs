namespace Heapwright.Core.Readings.Deeds;

/// <summary>The tests of a heap that stand in its diary.</summary>
public enum HomeTest
{
    /// <summary>Damp compost in a wide vacuum flask: does it still heat itself?</summary>
    SelfHeating,

    /// <summary>Seeds in compost against seeds in a control.</summary>
    Seeds,

    /// <summary>Beans or peas in pots: residues of weedkillers.</summary>
    Beans,

    /// <summary>Damp compost closed in a bag.</summary>
    Bag,

    /// <summary>How much of it there is: volume, mass, moisture.</summary>
    Amount,

    /// <summary>The report of a laboratory, or a person's own meter.</summary>
    Lab,
}
