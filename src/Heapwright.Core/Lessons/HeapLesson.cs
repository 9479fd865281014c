using System.Collections.Immutable;
using Heapwright.Core.Forecasts;

namespace Heapwright.Core.Lessons;

/// <summary>What a heap taught.</summary>
public sealed record HeapLesson
{
    /// <summary>What was predicted against what was measured.</summary>
    public required ImmutableArray<LessonRow> Rows { get; init; }

    /// <summary>The heap fitted to all its readings, from the plain priors.</summary>
    public required ForecastAnswer Fit { get; init; }

    /// <summary>The parameters that moved by at least <see cref="HeapLessons.Moved"/>, those that moved most first.</summary>
    public required ImmutableArray<FittedParameter> Moved { get; init; }

    /// <summary>Whether the moisture as built moved by as much.</summary>
    public required bool MoistureMoved { get; init; }

    /// <summary>Whether there is enough to be kept for the next heap: readings enough, and a fit that comes near them.</summary>
    public required bool CanBeKept { get; init; }
}
