using Heapwright.Core.Forecasts;

namespace Heapwright.Core.Lessons;

/// <summary>A heap of which is asked what it taught.</summary>
/// <param name="Heap">The heap with its readings and squeezes; what earlier heaps taught is left out of account.</param>
/// <param name="Yield">What was taken out of it: how much, by when, and whether it was all; null where nothing was.</param>
public sealed record LessonQuestion(ForecastQuestion Heap, TakenOut? Yield);
