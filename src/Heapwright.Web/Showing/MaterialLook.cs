using Heapwright.App.Drawings;
using Heapwright.Core.Materials;

namespace Heapwright.Web.Showing;

/// <summary>The pattern by which a material is told apart in pictures, also without colour.</summary>
public static class MaterialLook
{
    /// <summary>The pattern of a material.</summary>
    /// <param name="material">The material; null where it is not known.</param>
    public static string Of(Material? material) => MaterialSprite.NameOf(material);
}
