namespace Heapwright.Web.Pages.Mixing;

/// <summary>One line of a what-if.</summary>
/// <param name="Material">The material; see <see cref="App.Sites.MaterialKey"/>.</param>
/// <param name="Name">The person's words for it.</param>
/// <param name="Amount">How many of the unit.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Days">Days it has been in store.</param>
public sealed record MixLine(string Material, string Name, double Amount, string Unit, int Days);
