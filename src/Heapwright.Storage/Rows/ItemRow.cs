namespace Heapwright.Storage.Rows;

/// <summary>What the row of every kept thing has.</summary>
public abstract class ItemRow
{
    /// <summary>The order in which things were first written.</summary>
    public long Position { get; set; }

    /// <summary>The id of the thing.</summary>
    public Guid Id { get; set; }

    /// <summary>Whether it belongs to the sample garden.</summary>
    public bool IsSample { get; set; }

    /// <summary>Whether it is there no longer; the row stays, so that it can come back.</summary>
    public bool IsRemoved { get; set; }
}
