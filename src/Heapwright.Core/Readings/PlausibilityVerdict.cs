using Heapwright.Core.Quantities;
using Heapwright.Core.Reasons;
using UnitsNet;

namespace Heapwright.Core.Readings;

/// <summary>What was thought of a reading when it arrived. The reading is kept whatever it says.</summary>
/// <param name="Status">How far it can be believed.</param>
/// <param name="Reasons">Why; empty where nothing speaks against it.</param>
/// <param name="Suggested">What was meant, if the unit was mixed up; null otherwise.</param>
public sealed record PlausibilityVerdict(
    PlausibilityStatus Status,
    EquatableList<Reason> Reasons,
    Temperature? Suggested = null
)
{
    /// <summary>Nothing speaks against it.</summary>
    public static PlausibilityVerdict Fine { get; } = new(PlausibilityStatus.Plausible, []);

    /// <summary>Whether the models may use it, and other readings are held against it.</summary>
    public bool IsBelieved => Status is PlausibilityStatus.Plausible or PlausibilityStatus.Doubtful;
}
