namespace Heapwright.Storage.Rows;

/// <summary>The row of the site.</summary>
public sealed class SiteRow : ItemRow
{
    /// <summary>What people call it.</summary>
    public string Name { get; set; } = "";

    /// <summary>The id of its time zone.</summary>
    public string TimeZone { get; set; } = "";

    /// <summary>The unit in which temperature is shown; stored is nothing but SI and °C.</summary>
    public string ShownTemperature { get; set; } = "";

    /// <summary>The unit in which volume is shown.</summary>
    public string ShownVolume { get; set; } = "";

    /// <summary>The unit in which mass is shown.</summary>
    public string ShownMass { get; set; } = "";

    /// <summary>The unit in which length is shown.</summary>
    public string ShownLength { get; set; } = "";

    /// <summary>The language of the pages.</summary>
    public string Language { get; set; } = "";

    /// <summary>The air through the year as JSON, see MonthlyAir; null where nobody typed it.</summary>
    public string? MonthlyAir { get; set; }
}
