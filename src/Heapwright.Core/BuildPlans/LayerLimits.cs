namespace Heapwright.Core.BuildPlans;

/// <summary>How thick layers may be, in cm as laid loose, and how deep scraps lie; common practice unless named.</summary>
public static class LayerLimits
{
    /// <summary>
    /// A layer with grass: more mats and turns to slime. Klickitat County prints under 4 in (10 cm); 5 cm is common
    /// practice.
    /// </summary>
    public const double Grass = 5;

    /// <summary>A layer with leaves: more sheds water and lies like pages.</summary>
    public const double Leaves = 10;

    /// <summary>Any other layer of a pair (Klickitat County, printed: 4 to 6 in).</summary>
    public const double Other = 15;

    /// <summary>A layer of other greens where more layers cost little.</summary>
    public const double OtherAtEase = 10;

    /// <summary>A dusting of soil or old compost.</summary>
    public const double Soil = 2;

    /// <summary>The thinnest base and cover that do their work.</summary>
    public const double CoatLow = 10;

    /// <summary>Base and cover where there is plenty.</summary>
    public const double CoatUsual = 12;

    /// <summary>The thickest base and cover that are of use.</summary>
    public const double CoatHigh = 15;

    /// <summary>How far kitchen scraps stay from every side.</summary>
    public const double ScrapsMargin = 25;

    /// <summary>Kitchen scraps in one layer, over the floor that the margin leaves.</summary>
    public const double Scraps = 15;

    /// <summary>A thinner layer is not laid by itself but forked together with its neighbour; an estimate.</summary>
    public const double Thinnest = 2;

    /// <summary>The most layers a person follows; beyond them the stuff is mixed first. An estimate.</summary>
    public const int MostLayers = 16;

    /// <summary>The most pairs, with base and cover, in as many layers.</summary>
    public const int MostPairs = MostLayers - 2;
}
