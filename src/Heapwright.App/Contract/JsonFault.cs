using System.Globalization;
using System.Text.Json;

namespace Heapwright.App.Contract;

/// <summary>Says why bytes are no question: no JSON, nested too deep, or a field that stands twice.</summary>
internal static class JsonFault
{
    private const int LongestName = 60;

    /// <summary>The sentence for a fault.</summary>
    /// <param name="fault">What the parser found.</param>
    /// <param name="deepest">The levels that are read.</param>
    public static string Said(JsonException fault, int deepest)
    {
        var message = fault.Message;
        if (message.StartsWith("Duplicate", StringComparison.Ordinal))
        {
            return $"the field {Name(message)}stands twice in the same object; every field may stand once";
        }

        var line = (fault.LineNumber ?? 0) + 1;
        var column = (fault.BytePositionInLine ?? 0) + 1;
        return message.Contains("depth", StringComparison.Ordinal)
            ? string.Create(
                CultureInfo.InvariantCulture,
                $"is nested more than {deepest} levels deep (line {line}, column {column}); no question is"
            )
            : string.Create(
                CultureInfo.InvariantCulture,
                $"is not JSON (line {line}, column {column}); one JSON object is needed"
            );
    }

    // The parser gives the name between apostrophes only; without them the sentence goes without the name.
    private static string Name(string message)
    {
        var (from, to) = (message.IndexOf('\''), message.LastIndexOf('\''));
        if (from < 0 || to - from is < 2 or > LongestName)
        {
            return "";
        }

        return $"\"{message[(from + 1)..to]}\" ";
    }
}
