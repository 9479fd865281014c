namespace Heapwright.Core.Lessons;

/// <summary>A figure that can be read off a course of temperatures, and by which heaps are held against each other.</summary>
public enum HeapFigure
{
    /// <summary>The highest temperature, °C.</summary>
    Peak,

    /// <summary>When 55 °C is first passed, days since building.</summary>
    First55,

    /// <summary>Days in all at 55 °C or above.</summary>
    DaysAt55,

    /// <summary>From when on it stays below 40 °C, days since building.</summary>
    Below40,
}
