using System.Text.Json.Nodes;

namespace Heapwright.App.Contract;

/// <summary>The answer to one question, the same for the command line and the web.</summary>
/// <param name="Json">The answer as data, with its schema number.</param>
/// <param name="Yes">True if it could be answered; false for an answered "no", whose reason stands in the data.</param>
/// <param name="Text">The answer for a person to read; lines end with a line feed.</param>
public sealed record Answer(JsonObject Json, bool Yes, string Text);
