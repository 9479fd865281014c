namespace Heapwright.Core.Lessons;

/// <summary>What is held against the prediction.</summary>
public enum LessonSubject
{
    /// <summary>The highest reading, °C.</summary>
    Peak,

    /// <summary>The day of 55 °C.</summary>
    First55,

    /// <summary>Days at 55 °C or above.</summary>
    DaysAt55,

    /// <summary>The day from which on it stays below 40 °C.</summary>
    Below40,

    /// <summary>Moisture as the hand said, % of wet mass.</summary>
    Moisture,

    /// <summary>Compost that was taken out, litres.</summary>
    Yield,
}
