namespace Heapwright.Core.Materials.Measurements;

/// <summary>Something a person measured on their own stuff.</summary>
public interface IMeasurement
{
    /// <summary>What it tells about one property of a material.</summary>
    /// <param name="material">The material measured; its kind decides how much some measurements tell.</param>
    /// <exception cref="ArgumentException">This cannot be measured so on this material.</exception>
    Likelihood On(Material material);
}
