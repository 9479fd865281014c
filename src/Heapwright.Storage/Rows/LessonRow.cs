namespace Heapwright.Storage.Rows;

/// <summary>The row of what a heap taught.</summary>
public sealed class LessonRow : ItemRow
{
    /// <summary>The heap.</summary>
    public Guid HeapId { get; set; }

    /// <summary>What the heap is called.</summary>
    public string Name { get; set; } = "";

    /// <summary>The bay, if it is one of the site's.</summary>
    public Guid? BayId { get; set; }

    /// <summary>The bin; each name carries its unit.</summary>
    public string BinJson { get; set; } = "{}";

    /// <summary>When it was learned, in ISO 8601.</summary>
    public string MadeAtUtc { get; set; } = "";

    /// <summary>From how many readings.</summary>
    public int Readings { get; set; }

    /// <summary>Whether it is used for the next heaps.</summary>
    public bool IsUsed { get; set; }

    /// <summary>Mean and deviation of each parameter, in standard deviations of its prior.</summary>
    public string ParametersJson { get; set; } = "{}";
}
