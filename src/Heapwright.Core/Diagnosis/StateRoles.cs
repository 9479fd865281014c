namespace Heapwright.Core.Diagnosis;

/// <summary>What each cause does to the question whether its heap is healthy.</summary>
/// <param name="IsFault">Whether it is something that needs changing.</param>
/// <param name="Explains">Whether it explains by itself why a heap does not heat, or heats too much.</param>
/// <param name="IsQuiet">Whether it is a stage that explains something only where nothing is wrong at all.</param>
internal sealed record StateRoles(bool[] IsFault, bool[] Explains, bool[] IsQuiet)
{
    // A fault that makes a stall this many times likelier explains a cold heap.
    private const double Stalls = 5;

    public static StateRoles Of(SignModel model)
    {
        var stage = model.Field(SignModel.StageField);
        var stalled = stage.Words.IndexOf(SignModel.Stalled);
        var count = model.Causes.Length;
        var roles = new StateRoles(new bool[count], new bool[count], new bool[count]);
        for (var c = 0; c < count; c++)
        {
            var cause = model.Causes[c];
            roles.IsFault[c] = cause.Group == CauseGroup.Fault;
            roles.Explains[c] =
                cause.MayBurn
                || cause.Id == "overheating"
                || (stalled >= 0 && stage.Factor(stalled, c) > Stalls);
            roles.IsQuiet[c] = cause.Id == "normal_hot";
        }

        return roles;
    }
}
