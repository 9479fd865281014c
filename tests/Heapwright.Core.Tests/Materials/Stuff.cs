using Heapwright.Core.Materials;
using Heapwright.Core.Quantities;

namespace Heapwright.Core.Tests.Materials;

/// <summary>Made-up materials for the tests.</summary>
internal static class Stuff
{
    public static Material Of(
        string id = "stuff",
        string kind = "leafy",
        string freshness = "dry",
        string family = "family",
        string particle = "medium",
        params string[] alsoCalled
    ) =>
        new()
        {
            Id = id,
            Name = id.Replace('_', ' '),
            AlsoCalled = [.. alsoCalled],
            Group = "group",
            Family = family,
            Kind = kind,
            State = freshness,
            Freshness = freshness,
            CountsAs = "brown",
            Particle = particle,
            Properties = Usual,
        };

    public static MaterialProperties Usual { get; } =
        MaterialProperties
            .None.With(MaterialProperty.Nitrogen, Spread.Of(0.6, 0.9, 1.4))
            .With(MaterialProperty.Carbon, Spread.Of(42, 46, 50))
            .With(MaterialProperty.Moisture, Spread.Of(10, 20, 40))
            .With(MaterialProperty.BulkDensity, Spread.Of(50, 80, 130))
            .With(MaterialProperty.Ash, Spread.Of(5, 8, 14))
            .With(MaterialProperty.Lignin, Spread.Of(10, 15, 22))
            .With(MaterialProperty.Fast, Spread.Of(8, 14, 24));
}
