using System.Collections.Immutable;

namespace Heapwright.Core.Diagnosis;

/// <summary>What each cause does to the question whether its heap is healthy.</summary>
/// <param name="IsFault">Whether it is something that needs changing.</param>
/// <param name="Explains">Whether it explains by itself why a heap does not heat, or heats too much.</param>
/// <param name="IsQuiet">Whether it is a stage that explains something only where nothing is wrong at all.</param>
internal sealed record StateRoles(
    ImmutableArray<bool> IsFault,
    ImmutableArray<bool> Explains,
    ImmutableArray<bool> IsQuiet
)
{
    // A fault that makes a stall this many times likelier explains a cold heap.
    private const double Stalls = 5;

    public static StateRoles Of(SignModel model)
    {
        var stage = model.Field(SignModel.StageField);
        var stalled = stage.Words.IndexOf(SignModel.Stalled);
        return new StateRoles(
            [.. model.Causes.Select(c => c.Group == CauseGroup.Fault)],
            [
                .. model.Causes.Select(c =>
                    c.MayBurn
                    || c.Id == "overheating"
                    || stalled >= 0 && stage.Factor(stalled, model.Given(c.Id)) > Stalls
                ),
            ],
            [.. model.Causes.Select(c => c.Id == "normal_hot")]
        );
    }
}
