namespace Heapwright.Storage.Rows;

/// <summary>The row of something at hand.</summary>
public sealed class StockRow : ItemRow
{
    /// <summary>The key of the material.</summary>
    public string Material { get; set; } = "";

    /// <summary>The person's words for it.</summary>
    public string Name { get; set; } = "";

    /// <summary>How many of the unit.</summary>
    public double Amount { get; set; }

    /// <summary>The asker's unit; containers have their size in the table of containers.</summary>
    public string AmountUnit { get; set; } = "";

    /// <summary>The day in the site's zone, in ISO 8601.</summary>
    public string SinceDate { get; set; } = "";

    /// <summary>A note; may be empty.</summary>
    public string Note { get; set; } = "";

    /// <summary>Who gave it; may be empty.</summary>
    public string Giver { get; set; } = "";
}
