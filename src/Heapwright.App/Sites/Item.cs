using Heapwright.App.Changes;

namespace Heapwright.App.Sites;

/// <summary>Something that is kept at a site: a bay, a container, stuff at hand, a recipe, ….</summary>
public abstract record Item
{
    /// <summary>The name under which it is kept and exported; never used twice.</summary>
    public required Guid Id { get; init; }

    /// <summary>Whether it belongs to the sample garden and holds invented data.</summary>
    public bool IsSample { get; init; }

    /// <summary>What is wrong with it, field by field; empty if nothing is.</summary>
    public abstract IEnumerable<Refusal> Faults();
}
