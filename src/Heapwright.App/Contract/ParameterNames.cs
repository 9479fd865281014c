using System.Text;
using Heapwright.Core.Simulation;

namespace Heapwright.App.Contract;

/// <summary>Parameters of the simulation as data/parameters.csv names them.</summary>
internal static class ParameterNames
{
    private static readonly Dictionary<string, HeapParameter> ByName =
        Enum.GetValues<HeapParameter>().ToDictionary(Of, StringComparer.Ordinal);

    /// <summary>All names.</summary>
    public static string[] All { get; } = [.. ByName.Keys];

    /// <summary>The name of a parameter, such as <c>fast_rate</c>.</summary>
    /// <param name="parameter">The parameter.</param>
    public static string Of(HeapParameter parameter)
    {
        var name = new StringBuilder();
        foreach (var letter in parameter.ToString())
        {
            if (char.IsUpper(letter) && name.Length > 0)
            {
                name.Append('_');
            }

            name.Append(char.ToLowerInvariant(letter));
        }

        return name.ToString();
    }

    /// <summary>A parameter by its name; null where none has it.</summary>
    /// <param name="name">The name.</param>
    public static HeapParameter? Find(string name) =>
        ByName.TryGetValue(name, out var parameter) ? parameter : null;
}
