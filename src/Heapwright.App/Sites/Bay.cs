using Heapwright.App.Changes;

namespace Heapwright.App.Sites;

/// <summary>A place where a heap is built: a bay with walls, a ring, a windrow's strip or a free heap's floor.</summary>
public sealed record Bay : Item
{
    /// <summary>The shapes a bay can have.</summary>
    public static IReadOnlyList<string> Shapes { get; } = ["box", "ring", "cone", "windrow"];

    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>box, ring, cone or windrow.</summary>
    public required string Shape { get; init; }

    /// <summary>Inside length of a box or windrow.</summary>
    public double? LengthM { get; init; }

    /// <summary>Inside width of a box, base width of a windrow.</summary>
    public double? WidthM { get; init; }

    /// <summary>Diameter of a ring, base diameter of a cone.</summary>
    public double? DiameterM { get; init; }

    /// <summary>The height to which it may be filled.</summary>
    public required double HeightM { get; init; }

    /// <summary>Whether it has a diameter instead of length and width.</summary>
    public bool IsRound() => Shape is "ring" or "cone";

    /// <inheritdoc/>
    public override IEnumerable<Refusal> Faults()
    {
        foreach (var fault in Check.Words(Name, "name", 1, 60))
        {
            yield return fault;
        }

        if (Check.Choice(Shape, "shape", Shapes) is { } shape)
        {
            yield return shape;
            yield break;
        }

        (string Field, double? Value, bool Belongs)[] sides =
        [
            ("length_m", LengthM, !IsRound()),
            ("width_m", WidthM, !IsRound()),
            ("diameter_m", DiameterM, IsRound()),
        ];
        foreach (var (field, value, belongs) in sides)
        {
            if (belongs && value is null)
            {
                yield return Refusal.Of(field, "sites.size_missing");
            }
            else if (!belongs && value is not null)
            {
                yield return Refusal.Of(field, "sites.size_stranger");
            }
            else if (value is { } size && Check.Between(size, field, 0.1, 100) is { } fault)
            {
                yield return fault;
            }
        }

        if (Check.Between(HeightM, "height_m", 0.1, 10) is { } height)
        {
            yield return height;
        }
    }
}
