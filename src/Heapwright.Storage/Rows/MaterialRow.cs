namespace Heapwright.Storage.Rows;

/// <summary>The row of a material of the site's own.</summary>
public sealed class MaterialRow : ItemRow
{
    /// <summary>Its name.</summary>
    public string Name { get; set; } = "";

    /// <summary>green, brown, structure, soil or other.</summary>
    public string CountsAs { get; set; } = "";

    /// <summary>fresh, wilted, dry or aged; may be empty.</summary>
    public string Freshness { get; set; } = "";

    /// <summary>leafy, stemmy, woody, …; may be empty.</summary>
    public string Kind { get; set; } = "";

    /// <summary>Ranges by field name; each name carries its unit.</summary>
    public string PropertiesJson { get; set; } = "{}";

    /// <summary>A note; may be empty.</summary>
    public string Note { get; set; } = "";
}
