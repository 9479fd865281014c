using System.Globalization;

namespace Heapwright.Web.Pages.Mixing;

/// <summary>One line of a what-if.</summary>
/// <param name="Material">The material; see <see cref="App.Sites.MaterialKey"/>.</param>
/// <param name="Name">The person's words for it.</param>
/// <param name="Amount">How many of the unit.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Days">Days it has been in store.</param>
public sealed record MixLine(string Material, string Name, double Amount, string Unit, int Days)
{
    /// <summary>What stood in the place of the amount and was refused; null where it was read.</summary>
    public string? Refused { get; init; }

    /// <summary>The amount as it stands in an address.</summary>
    public string AmountText => Refused ?? Amount.ToString(CultureInfo.InvariantCulture);
}
