using System.Globalization;
using Heapwright.Core.Amounts;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Library;

/// <summary>Reads the usual containers from data/containers.csv.</summary>
public static class UsualContainers
{
    private static readonly Lazy<ContainerSet> Shipped = new(Read);

    /// <summary>The usual containers; read once.</summary>
    public static ContainerSet Set => Shipped.Value;

    private static ContainerSet Read()
    {
        var all = new List<UnitSize>();
        using var reader = DataFiles.Csv("containers.csv");
        foreach (var row in reader)
        {
            var litres = Spread.Of(
                double.Parse(row["low_l"].Span, CultureInfo.InvariantCulture),
                double.Parse(row["typical_l"].Span, CultureInfo.InvariantCulture),
                double.Parse(row["high_l"].Span, CultureInfo.InvariantCulture)
            );
            all.Add(
                UnitSize.OfVolume(row["id"].ToString(), litres, wholeByDefault: true) with
                {
                    IsAssumed = true,
                }
            );
        }

        return ContainerSet.Of(all);
    }
}
