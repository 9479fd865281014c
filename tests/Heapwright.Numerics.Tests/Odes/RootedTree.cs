using Heapwright.Numerics.Odes;

namespace Heapwright.Numerics.Tests.Odes;

/// <summary>
/// A rooted tree. A Runge–Kutta method has order p when Σ bᵢ Φᵢ(t) = 1/γ(t) for every tree t of up to p nodes.
/// </summary>
/// <remarks>Source: Butcher's theory as in Hairer, Nørsett and Wanner, volume I, II.2 (from memory).</remarks>
internal sealed class RootedTree
{
    private readonly RootedTree[] branches;

    private RootedTree(RootedTree[] branches) => this.branches = branches;

    public int Order => 1 + branches.Sum(b => b.Order);

    /// <summary>γ, the density.</summary>
    public double Density => Order * branches.Aggregate(1.0, (product, b) => product * b.Density);

    /// <summary>All trees of an order.</summary>
    public static IReadOnlyList<RootedTree> OfOrder(int order) =>
        [.. Forests(order - 1, order - 1, int.MaxValue).Select(f => new RootedTree([.. f]))];

    /// <summary>Σ bᵢ Φᵢ − 1/γ for a method with given weights.</summary>
    public double Residual(ButcherTableau tableau, IReadOnlyList<double> weights)
    {
        var sum = 0.0;
        for (var i = 0; i < weights.Count; i++)
        {
            sum += weights[i] * Weight(tableau, i);
        }

        return sum - (1 / Density);
    }

    private double Weight(ButcherTableau tableau, int stage)
    {
        var product = 1.0;
        foreach (var branch in branches)
        {
            var sum = 0.0;
            for (var j = 0; j < tableau.Stages[stage].Length; j++)
            {
                sum += tableau.Stages[stage][j] * branch.Weight(tableau, j);
            }

            product *= sum;
        }

        return product;
    }

    // Sets of trees with so many nodes in all; a tree of an order is named by its place, and places do not rise, so
    // that no set comes twice.
    private static IEnumerable<IEnumerable<RootedTree>> Forests(int nodes, int largest, int place)
    {
        if (nodes == 0)
        {
            yield return [];
            yield break;
        }

        for (var order = Math.Min(nodes, largest); order >= 1; order--)
        {
            var trees = OfOrder(order);
            var last = order == largest ? Math.Min(trees.Count - 1, place) : trees.Count - 1;
            for (var i = last; i >= 0; i--)
            {
                foreach (var rest in Forests(nodes - order, order, i))
                {
                    yield return rest.Prepend(trees[i]);
                }
            }
        }
    }
}
