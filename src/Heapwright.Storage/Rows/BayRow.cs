namespace Heapwright.Storage.Rows;

/// <summary>The row of a bay; sizes are inside sizes.</summary>
public sealed class BayRow : ItemRow
{
    /// <summary>Its name.</summary>
    public string Name { get; set; } = "";

    /// <summary>box, ring, cone or windrow.</summary>
    public string Shape { get; set; } = "";

    /// <summary>Length in metres.</summary>
    public double? LengthM { get; set; }

    /// <summary>Width in metres.</summary>
    public double? WidthM { get; set; }

    /// <summary>Diameter in metres.</summary>
    public double? DiameterM { get; set; }

    /// <summary>Height in metres.</summary>
    public double HeightM { get; set; }
}
