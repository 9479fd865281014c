namespace Heapwright.Storage.Rows;

/// <summary>The row of a heap as it was built.</summary>
public sealed class HeapRow : ItemRow
{
    /// <summary>Its name.</summary>
    public string Name { get; set; } = "";

    /// <summary>The bay, if it is one of the site's.</summary>
    public Guid? BayId { get; set; }

    /// <summary>The build sheet, if it was kept.</summary>
    public Guid? SheetId { get; set; }

    /// <summary>When it was finished, in ISO 8601.</summary>
    public string BuiltAtUtc { get; set; } = "";

    /// <summary>The id of its time zone.</summary>
    public string TimeZone { get; set; } = "";

    /// <summary>What its people want most of it.</summary>
    public string Aim { get; set; } = "";

    /// <summary>What it was built of and in; each name carries its unit.</summary>
    public string QuestionJson { get; set; } = "{}";
}
