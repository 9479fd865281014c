using System.Globalization;
using Heapwright.Core.Quantities;
using Heapwright.Core.Simulation;

namespace Heapwright.Core.Tests.Simulation;

/// <summary>The parameters of data/parameters.csv, read without the application.</summary>
internal static class ShippedParameters
{
    private static readonly Lazy<HeapParameters> Shipped = new(Read);

    public static HeapParameters Table => Shipped.Value;

    private static HeapParameters Read()
    {
        var priors = new Spread[HeapParameters.Count];
        var file = Path.Combine(AppContext.BaseDirectory, "parameters.csv");
        foreach (var line in File.ReadLines(file).Skip(1))
        {
            // Only the note, the last field, may hold commas.
            var field = line.Split(',');
            var name = field[0].Replace("_", "", StringComparison.Ordinal);
            priors[(int)Enum.Parse<HeapParameter>(name, ignoreCase: true)] = Spread.Of(
                Number(field[4]),
                Number(field[3]),
                Number(field[5])
            );
        }

        return new HeapParameters(priors);
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
