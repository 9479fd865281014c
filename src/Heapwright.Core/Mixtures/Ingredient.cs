using Heapwright.Core.Amounts;
using Heapwright.Core.Materials;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.Mixtures;

/// <summary>One material of a mixture, with what is known of it and how much there is.</summary>
public sealed record Ingredient
{
    /// <summary>What the asker calls it.</summary>
    public required string Name { get; init; }

    /// <summary>Whether the asker gave no name, so that <see cref="Name"/> only says where it stood in the list.</summary>
    public bool IsUnnamed { get; init; }

    /// <summary>The material of the library it is taken for, or null.</summary>
    public Material? Material { get; init; }

    /// <summary>What is known of it; nitrogen, carbon and moisture must be.</summary>
    public required MaterialProperties Properties { get; init; }

    /// <summary>
    /// The carbon to nitrogen ratio, where it was given together with one of the two: it then fixes the other, point
    /// by point of the sample.
    /// </summary>
    public Spread? Ratio { get; init; }

    /// <summary>Whether the ratio fixes carbon (with nitrogen known) rather than nitrogen (with carbon known).</summary>
    public bool RatioFixesCarbon { get; init; }

    /// <summary>How many of the unit.</summary>
    public required Spread Amount { get; init; }

    /// <summary>The unit and what one of it holds.</summary>
    public required UnitSize Unit { get; init; }

    /// <summary>
    /// The name of its stream of sample points: the same stuff listed twice has the same properties, and the answer
    /// does not depend on the order of the list. What has no name is known by its properties.
    /// </summary>
    public string Key => Material?.Id ?? (IsUnnamed ? "unnamed " + Described() : Name);

    private string Described() =>
        string.Join(
            ' ',
            Properties
                .Known()
                .Select(p => $"{PropertyFacts.FieldName(p)} {Properties[p]}")
                .Append($"ratio {Ratio}")
        );
}
