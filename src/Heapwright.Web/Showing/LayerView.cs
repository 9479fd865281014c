using System.Text.Json.Nodes;

namespace Heapwright.Web.Showing;

/// <summary>A layer as a page shows it.</summary>
/// <param name="Number">Its number, from the ground up.</param>
/// <param name="Json">The layer in the answer of <c>build</c>.</param>
/// <param name="IsDone">Whether it is ticked off.</param>
public sealed record LayerView(int Number, JsonObject Json, bool IsDone);
