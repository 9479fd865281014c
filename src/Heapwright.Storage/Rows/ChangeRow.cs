namespace Heapwright.Storage.Rows;

/// <summary>The row of one change within an act; written once, never changed.</summary>
public sealed class ChangeRow
{
    /// <summary>The act.</summary>
    public long ActNumber { get; set; }

    /// <summary>Its place in the act, from 0 on.</summary>
    public int Place { get; set; }

    /// <summary>The kind of thing.</summary>
    public string ItemKind { get; set; } = "";

    /// <summary>Which thing.</summary>
    public Guid ItemId { get; set; }

    /// <summary>As it was; null where it was not there.</summary>
    public string? BeforeJson { get; set; }

    /// <summary>As it was afterwards; null where it was gone.</summary>
    public string? AfterJson { get; set; }
}
