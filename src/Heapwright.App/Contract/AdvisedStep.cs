using Heapwright.Core.Advice;

namespace Heapwright.App.Contract;

/// <summary>What a forecast advises to do next, as it is kept and told: the words and figures of <c>actions[0]</c>.</summary>
/// <param name="Deed">wait, turn, water, add_browns, add_greens, cover, stop_adding or close.</param>
/// <param name="OnDay">When, days since building.</param>
/// <param name="Litres">Water poured, litres; 0 for none.</param>
/// <param name="Amount">How much is added, in its unit; null for nothing.</param>
/// <param name="Unit">The unit of the amount; null for nothing.</param>
/// <param name="Material">What is added; null for nothing.</param>
/// <param name="Cover">The word of the new cover; null where it is left.</param>
public sealed record AdvisedStep(
    string Deed,
    double OnDay,
    double Litres,
    double? Amount,
    string? Unit,
    string? Material,
    string? Cover
)
{
    /// <summary>Whether the heap is left as it is.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public bool IsWaiting => Deed == ForecastAnswers.Deed(ActionKind.Wait);

    /// <summary>The step of an action.</summary>
    /// <param name="action">The action.</param>
    public static AdvisedStep Of(HeapAction action)
    {
        ArgumentNullException.ThrowIfNull(action);
        return new AdvisedStep(
            ForecastAnswers.Deed(action.Deed),
            action.OnDay,
            action.Litres,
            action.Stuff?.Amount.Typical,
            action.Stuff?.Unit.Unit,
            action.Stuff?.Name,
            action.Cover
        );
    }
}
