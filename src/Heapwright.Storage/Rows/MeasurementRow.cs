namespace Heapwright.Storage.Rows;

/// <summary>The row of a measurement.</summary>
public sealed class MeasurementRow : ItemRow
{
    /// <summary>The key of the material.</summary>
    public string Material { get; set; } = "";

    /// <summary>bucket_weight, oven_moisture, squeeze or lab.</summary>
    public string Measure { get; set; } = "";

    /// <summary>When, in ISO 8601.</summary>
    public string AtUtc { get; set; } = "";

    /// <summary>What was read off; each name carries its unit.</summary>
    public string ValuesJson { get; set; } = "{}";

    /// <summary>A note; may be empty.</summary>
    public string Note { get; set; } = "";
}
