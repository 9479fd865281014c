namespace Heapwright.Core.Simulation;

/// <summary>The course of one member in figures; days since building, NaN where a mark is not reached.</summary>
/// <param name="First49Day">When the core first passes 49 °C.</param>
/// <param name="First55Day">When it first passes 55 °C.</param>
/// <param name="First60Day">When it first passes 60 °C.</param>
/// <param name="PeakCelsius">The highest temperature of the core, °C.</param>
/// <param name="PeakDay">When.</param>
/// <param name="DaysAtOrAbove55">Days in all that the core is at 55 °C or above.</param>
/// <param name="ShareHeldPercent">Share of the matter held at 55 °C or above for 72 hours without a break, %.</param>
/// <param name="ShareDosedPercent">Share of the matter with a time-temperature dose of 1 or more, %.</param>
/// <param name="DryLossPercent">Dry matter lost, % of all that was put in.</param>
/// <param name="NitrogenLossPercent">Nitrogen lost, % of all that was put in.</param>
/// <param name="FinalVolumePercent">Volume at the end, % of that built.</param>
public readonly record struct HeapMilestones(
    double First49Day,
    double First55Day,
    double First60Day,
    double PeakCelsius,
    double PeakDay,
    double DaysAtOrAbove55,
    double ShareHeldPercent,
    double ShareDosedPercent,
    double DryLossPercent,
    double NitrogenLossPercent,
    double FinalVolumePercent
);
