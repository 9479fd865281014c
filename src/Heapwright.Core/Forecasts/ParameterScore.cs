namespace Heapwright.Core.Forecasts;

/// <summary>A parameter on the scale on which its prior is standard normal.</summary>
/// <param name="Mean">Standard deviations from the usual value.</param>
/// <param name="Deviation">Standard deviation; 1 where nothing is known beyond the prior.</param>
public readonly record struct ParameterScore(double Mean, double Deviation);
