namespace Heapwright.Core.Materials.Measurements;

/// <summary>How a sample was dried to constant weight.</summary>
public enum DryingMethod
{
    /// <summary>In an oven at about 105 °C, or longer in a cooler one.</summary>
    Oven,

    /// <summary>In a microwave, in short bursts; some pieces char while others are still damp.</summary>
    Microwave,
}
