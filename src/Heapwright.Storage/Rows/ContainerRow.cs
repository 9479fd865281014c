namespace Heapwright.Storage.Rows;

/// <summary>The row of a container.</summary>
public sealed class ContainerRow : ItemRow
{
    /// <summary>Its name.</summary>
    public string Name { get; set; } = "";

    /// <summary>Litres in one, as filled.</summary>
    public double HoldsL { get; set; }

    /// <summary>Whether it is filled over the rim.</summary>
    public bool IsHeaped { get; set; }

    /// <summary>Whether the stuff is pressed in.</summary>
    public bool IsTrodden { get; set; }
}
