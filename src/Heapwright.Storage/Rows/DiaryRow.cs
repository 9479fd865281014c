namespace Heapwright.Storage.Rows;

/// <summary>The row of an entry of a diary; written once, never changed, never taken out.</summary>
public sealed class DiaryRow
{
    /// <summary>What stands in the text of an entry that tells of a move to another bay.</summary>
    public const string Move = "\"do\":\"move\"";

    /// <summary>The heap.</summary>
    public Guid HeapId { get; set; }

    /// <summary>Its place in the diary of the heap, from 1 on.</summary>
    public long Place { get; set; }

    /// <summary>The id it was given where it was made.</summary>
    public Guid EntryId { get; set; }

    /// <summary>When it happened, milliseconds since 1970.</summary>
    public long AtUnixMs { get; set; }

    /// <summary>Whether it is a correction, which is read whatever its time.</summary>
    public bool IsCorrection { get; set; }

    /// <summary>The entry; each name carries its unit.</summary>
    public string RecordJson { get; set; } = "{}";

    /// <summary>The link to the entry before it, in hexadecimal digits.</summary>
    public string ChainSha256 { get; set; } = "";
}
