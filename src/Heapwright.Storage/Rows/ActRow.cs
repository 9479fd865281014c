namespace Heapwright.Storage.Rows;

/// <summary>The row of an act; written once, never changed.</summary>
public sealed class ActRow
{
    /// <summary>Its place in the record.</summary>
    public long Number { get; set; }

    /// <summary>When, in ISO 8601.</summary>
    public string AtUtc { get; set; } = "";

    /// <summary>The code of its sentence.</summary>
    public string What { get; set; } = "";

    /// <summary>The values in the sentence.</summary>
    public string ValuesJson { get; set; } = "[]";

    /// <summary>The act it takes back.</summary>
    public long? UndoesNumber { get; set; }

    /// <summary>What changed.</summary>
    public ICollection<ChangeRow> Changes { get; set; } = [];
}
