namespace Heapwright.Validation.Forecasts;

/// <summary>In what a twin's truth differs from the model that is fitted to it.</summary>
public enum TwinStructure
{
    /// <summary>Only in its numbers, and in the weather.</summary>
    Same,

    /// <summary>Also in a finer grid.</summary>
    Finer,

    /// <summary>Also in a finer grid and in the shape of its kinetics.</summary>
    Other,
}
