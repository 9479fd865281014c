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
            double Number(string column) =>
                double.Parse(row[column].Span, CultureInfo.InvariantCulture);
            var litres = Spread.Of(Number("low_l"), Number("typical_l"), Number("high_l"));
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
