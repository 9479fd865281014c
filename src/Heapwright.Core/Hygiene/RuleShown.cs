namespace Heapwright.Core.Hygiene;

/// <summary>What the record shows at the temperatures of a rule, nothing filled in.</summary>
/// <param name="Band">The temperatures.</param>
/// <param name="DaysAtOrAbove">Calendar days on which every probe was read and hot.</param>
/// <param name="LongestRunDays">The most of them that follow one another without a gap.</param>
/// <param name="ElapsedDays">All the time shown hot, days of 24 hours.</param>
/// <param name="LongestElapsedDays">The longest time shown hot without a break, days of 24 hours.</param>
/// <param name="Turns">Turns in the record; null where it says nothing of turns.</param>
/// <param name="LongestSpellHours">The longest time at the temperatures of the rule's spell, hours; null without one.</param>
/// <param name="MeanCelsius">The mean that was held against the rule, °C; null where none is asked for.</param>
/// <param name="LeastDose">The smallest dose of all probes; null for a rule without one.</param>
public sealed record RuleShown(
    HeatBand Band,
    int DaysAtOrAbove,
    int LongestRunDays,
    double ElapsedDays,
    double LongestElapsedDays,
    int? Turns,
    double? LongestSpellHours,
    double? MeanCelsius,
    double? LeastDose
);
