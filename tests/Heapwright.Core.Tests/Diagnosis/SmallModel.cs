using Heapwright.Core.Diagnosis;

namespace Heapwright.Core.Tests.Diagnosis;

/// <summary>A model small enough to be worked out by hand: two faults, two stages, one class of heat.</summary>
internal static class SmallModel
{
    public static SignModel Model { get; } =
        new(
            [
                Cause("wet", CauseGroup.Fault, 0.2),
                Cause("cold", CauseGroup.Fault, 0.1),
                Cause("reading_misleads", CauseGroup.Fault, 0.05),
                Cause("normal_hot", CauseGroup.Stage, 0),
            ],
            [
                Row("stage", "normal_hot", "*", SignEffect.Often, 0.6),
                Row("stage", "stalled", "*", SignEffect.Often, 0.4),
                Row("stage", "stalled", "wet", SignEffect.Times, 3),
                Row("heat", "cold", "*", SignEffect.Often, 1),
                Row("squeeze", "drips", "*", SignEffect.Often, 0.3),
                Row("squeeze", "dry", "*", SignEffect.Often, 0.7),
                Row("squeeze", "drips", "wet", SignEffect.Times, 4),
                Row("smell", "rot", "*", SignEffect.Anyway, 0.05),
                Row("smell", "rot", "wet", SignEffect.Shows, 0.6),
                Row("smell", "rot", "cold", SignEffect.KeepsAway, 0.5),
            ],
            [new SignClash("squeeze", ["drips"], "smell", ["none"])]
        );

    public static HeapCause Cause(string id, CauseGroup group, double chance) =>
        new(id, group, chance, group == CauseGroup.Stage, [], []);

    public static SignRow Row(
        string field,
        string word,
        string given,
        SignEffect effect,
        double value
    ) => new(field, word, given, effect, value, []);
}
