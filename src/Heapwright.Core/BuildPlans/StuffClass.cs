namespace Heapwright.Core.BuildPlans;

/// <summary>What a stuff does in a heap, and so where in it it goes.</summary>
internal enum StuffClass
{
    Structure,
    Leaves,
    Brown,
    Grass,
    Green,
    Sprinkle,
    Kitchen,
    Soil,
}
