using System.Globalization;
using System.Text.Json.Nodes;

namespace Heapwright.Validation.Fuzzing;

/// <summary>Finds the value at a place such as <c>ingredients[1].amount</c>.</summary>
internal static class TreePlace
{
    public static JsonNode? At(this JsonNode tree, string place)
    {
        var node = tree;
        foreach (var step in place.Split('.', StringSplitOptions.RemoveEmptyEntries))
        {
            var bracket = step.IndexOf('[', StringComparison.Ordinal);
            node = node![bracket < 0 ? step : step[..bracket]];
            if (bracket < 0)
            {
                continue;
            }

            foreach (var index in step[(bracket + 1)..].TrimEnd(']').Split("]["))
            {
                node = node![int.Parse(index, CultureInfo.InvariantCulture)];
            }
        }

        return node;
    }
}
