namespace Heapwright.Storage.Rows;

/// <summary>A form the database has had; the highest number is the form it has.</summary>
public sealed class SchemaRow
{
    /// <summary>The number of the schema, one more with every migration.</summary>
    public int Number { get; set; }

    /// <summary>What the form brought.</summary>
    public string Brought { get; set; } = "";
}
