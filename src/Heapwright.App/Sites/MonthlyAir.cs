using System.Text.Json;
using Heapwright.App.Changes;
using Heapwright.Core.Simulation;

namespace Heapwright.App.Sites;

/// <summary>What the air at a site is like through the year, as its people typed it.</summary>
public sealed record MonthlyAir
{
    /// <summary>The coldest mean of a month that is taken, °C.</summary>
    public const double ColdestMonthC = -40;

    /// <summary>The warmest mean of a month that is taken, °C.</summary>
    public const double WarmestMonthC = 40;

    /// <summary>The widest swing that is taken, K.</summary>
    public const double WidestSwingK = 15;

    /// <summary>The field of a form or an import in which the mean of a month stands.</summary>
    /// <param name="month">1 to 12.</param>
    public static string Field(int month) =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"air_{month}");

    /// <summary>Shape [12], January first: mean air temperature of the month, °C.</summary>
    public required IReadOnlyList<double> MeansC { get; init; }

    /// <summary>Half the usual difference between the warmest and the coldest hour of a day, K; null where nobody typed it.</summary>
    public double? SwingK { get; init; }

    /// <inheritdoc/>
    public bool Equals(MonthlyAir? other) =>
        other is not null && SwingK == other.SwingK && MeansC.SequenceEqual(other.MeansC);

    /// <inheritdoc/>
    public override int GetHashCode() =>
        MeansC.Aggregate(SwingK.GetHashCode(), (hash, mean) => HashCode.Combine(hash, mean));

    /// <summary>What is wrong with it, field by field.</summary>
    public IEnumerable<Refusal> Faults()
    {
        if (MeansC.Count != MonthlyMeans.Months)
        {
            yield return Refusal.Of(Field(1), "sites.air_all_or_none", MeansC.Count);
        }

        for (var m = 0; m < MeansC.Count; m++)
        {
            if (Check.Between(MeansC[m], Field(m + 1), ColdestMonthC, WarmestMonthC) is { } fault)
            {
                yield return fault;
            }
        }

        if (SwingK is { } swing && Check.Between(swing, "air_swing", 0, WidestSwingK) is { } wide)
        {
            yield return wide;
        }
    }

    /// <summary>It as JSON, as it is kept.</summary>
    public string Write() => JsonSerializer.Serialize(this, ItemKinds.Json);

    /// <summary>It from JSON, as <see cref="Write"/> made it; null from null.</summary>
    /// <param name="json">The JSON.</param>
    public static MonthlyAir? Read(string? json) =>
        json is null ? null : JsonSerializer.Deserialize<MonthlyAir>(json, ItemKinds.Json);
}
