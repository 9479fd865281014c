namespace Heapwright.Core.BuildPlans;

/// <summary>How many pairs carry grass, other greens, or browns alone.</summary>
internal readonly record struct PairCounts(int Grass, int Green, int BrownOnly)
{
    public int All => Grass + Green + BrownOnly;

    /// <summary>The kind of green of each pair from the ground up, the kinds spread among each other.</summary>
    public StuffClass?[] Order()
    {
        var order = new List<(double Place, StuffClass? Kind)>();
        Add(order, Green, StuffClass.Green);
        Add(order, Grass, StuffClass.Grass);
        Add(order, BrownOnly, null);
        return [.. order.OrderBy(o => o.Place).Select(o => o.Kind)];
    }

    private static void Add(List<(double, StuffClass?)> order, int count, StuffClass? kind)
    {
        for (var i = 0; i < count; i++)
        {
            order.Add(((i + 0.5) / count, kind));
        }
    }
}
