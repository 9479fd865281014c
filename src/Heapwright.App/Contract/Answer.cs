using System.Text.Json.Nodes;

namespace Heapwright.App.Contract;

/// <summary>An answer: as JSON, as text for a person, and whether it is a yes.</summary>
/// <param name="Json">The answer as fixed by the contract.</param>
/// <param name="Yes">False when the question was understood and the answer is no (exit status 1).</param>
/// <param name="Text">The answer in words, for a person.</param>
public sealed record Answer(JsonObject Json, bool Yes, string Text);
