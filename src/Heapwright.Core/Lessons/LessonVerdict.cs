namespace Heapwright.Core.Lessons;

/// <summary>What was measured, held against a range.</summary>
public enum LessonVerdict
{
    /// <summary>It lies in the range.</summary>
    Inside,

    /// <summary>It lies below the range.</summary>
    Lower,

    /// <summary>It lies above the range.</summary>
    Higher,

    /// <summary>It was not measured, or not well enough.</summary>
    CannotTell,
}
