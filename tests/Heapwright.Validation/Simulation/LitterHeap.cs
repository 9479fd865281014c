using System.Collections.Immutable;
using System.Globalization;
using Heapwright.Core.Simulation;
using nietras.SeparatedValues;

namespace Heapwright.Validation.Simulation;

/// <summary>A measured heap of broiler litter (kamp2024, CC BY 4.0, reshaped), its weather and its covers.</summary>
internal static class LitterHeap
{
    /// <summary>The heap.</summary>
    public static HeapCase Case => PublishedHeaps.All.Single(h => h.Source == "kamp2024").Heap;

    /// <summary>It was covered, and uncovered.</summary>
    public static ImmutableArray<HeapEvent> Events { get; } =
    [
        new Covered(6.03, Surroundings.Covers["lid"]),
        new Covered(34.04, Surroundings.Covers["none"]),
    ];

    /// <summary>The weather by the hour.</summary>
    public static Weather Weather()
    {
        var days = new List<double>();
        var moments = new List<WeatherMoment>();
        using var reader = Sep.Reader().FromText(Text("litter-heap-weather.csv"));
        foreach (var row in reader)
        {
            if (row["air_c"].Span.IsEmpty)
            {
                continue;
            }

            days.Add(Number(row["day"].Span));
            moments.Add(
                new WeatherMoment(
                    Number(row["air_c"].Span),
                    Number(row["wind_2m_m_s"].Span),
                    24 * Number(row["rain_mm"].Span),
                    Number(row["rh_pct"].Span) / 100,
                    // The unit of this column is not stated; peaks near 700 make W/m² likely.
                    Number(row["global_rad_raw"].Span)
                )
            );
        }

        return Core.Simulation.Weather.Series([.. days], [.. moments]);
    }

    /// <summary>The mean of the middle sensors by the hour.</summary>
    public static List<(double Day, double Celsius)> Middle()
    {
        var readings = new List<(double, double)>();
        using var reader = Sep.Reader().FromText(Text("litter-heap.csv"));
        foreach (var row in reader)
        {
            if (row["probe"].Span.SequenceEqual("middle") && !row["temp_c"].Span.IsEmpty)
            {
                readings.Add((Number(row["day"].Span), Number(row["temp_c"].Span)));
            }
        }

        return readings;
    }

    private static double Number(ReadOnlySpan<char> text) =>
        text.IsEmpty ? 0 : double.Parse(text, CultureInfo.InvariantCulture);

    private static string Text(string name)
    {
        using var stream = typeof(LitterHeap).Assembly.GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
