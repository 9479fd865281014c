using System.Globalization;
using Heapwright.Core.Quantities;
using Heapwright.Core.Simulation;

namespace Heapwright.App.Library;

/// <summary>Reads the parameters of the simulation from data/parameters.csv.</summary>
public static class ParameterReader
{
    private static readonly Lazy<HeapParameters> Shipped = new(Read);

    /// <summary>The parameters that ship with the program; read once.</summary>
    public static HeapParameters Table => Shipped.Value;

    private static HeapParameters Read()
    {
        var priors = new Spread[HeapParameters.Count];
        var seen = 0;
        foreach (var row in DataFiles.Csv("parameters.csv"))
        {
            var name = row["parameter"].Replace("_", "", StringComparison.Ordinal);
            if (!Enum.TryParse<HeapParameter>(name, ignoreCase: true, out var parameter))
            {
                throw new InvalidDataException("parameters.csv: unknown parameter " + name);
            }

            priors[(int)parameter] = Spread.Of(
                Number(row["low"]),
                Number(row["default"]),
                Number(row["high"])
            );
            seen++;
        }

        return seen == HeapParameters.Count
            ? new HeapParameters(priors)
            : throw new InvalidDataException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"parameters.csv: {seen} rows for {HeapParameters.Count} parameters"
                )
            );
    }

    private static double Number(string text) =>
        double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
