namespace Heapwright.Core.Hygiene;

/// <summary>A time that may be the period of a rule.</summary>
/// <param name="FromDay">Its first calendar day.</param>
/// <param name="ToDay">Its last calendar day.</param>
/// <param name="FromHours">Its beginning.</param>
/// <param name="ToHours">Its end.</param>
/// <param name="Days">Its days, as they are counted.</param>
internal readonly record struct Stretch(
    int FromDay,
    int ToDay,
    double FromHours,
    double ToHours,
    double Days
);
