namespace Heapwright.Core.Recipes;

/// <summary>
/// The nodes that all searches of one question may visit together. Each search gets half of what is left, so that one
/// that cannot be finished leaves something to those after it, and never less than a search needs to find an answer at
/// all. A node of a wide search costs more, so wide ones get fewer.
/// </summary>
/// <param name="nodes">The nodes of a question with at most <see cref="UsualWidth"/> amounts to decide.</param>
/// <param name="width">The amounts to decide.</param>
internal sealed class SearchEffort(long nodes, int width)
{
    /// <summary>Up to this many amounts a node costs next to nothing.</summary>
    public const int UsualWidth = 12;

    private const long Least = 500;

    private long left = Scaled(nodes, width);

    /// <summary>The nodes the next search may visit.</summary>
    public long Next => Math.Max(Least, left / 2);

    /// <summary>Takes off what a search has visited.</summary>
    /// <param name="visited">Its nodes.</param>
    public void Spend(long visited) => left = Math.Max(0, left - visited);

    private static long Scaled(long nodes, int width)
    {
        var share = Math.Min(1, (double)UsualWidth / Math.Max(1, width));
        return (long)(nodes * share * share);
    }
}
