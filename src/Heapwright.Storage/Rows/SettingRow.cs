namespace Heapwright.Storage.Rows;

/// <summary>The row of a setting of this installation.</summary>
public sealed class SettingRow
{
    /// <summary>Its name.</summary>
    public string Name { get; set; } = "";

    /// <summary>Its value.</summary>
    public string Value { get; set; } = "";
}
