namespace Heapwright.Core.Forecasts;

/// <summary>Why a forecast should not be leant on.</summary>
public enum StaleReason
{
    /// <summary>There is no reading: only what is usual is known.</summary>
    NoReadings,

    /// <summary>The latest reading is days old.</summary>
    OldReadings,

    /// <summary>No member comes near the readings.</summary>
    Misfit,
}
