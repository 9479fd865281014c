using System.Globalization;
using Heapwright.App.Library;
using Heapwright.Core.Simulation;
using nietras.SeparatedValues;

namespace Heapwright.Validation.Simulation;

/// <summary>
/// A measured heap of broiler litter with its own hourly weather and covers (kamp2024, CC BY 4.0, reshaped), predicted
/// blind. Volume and footprint are not published; 40 m³ follows from 22 t at 550 kg/m³, our estimate.
/// </summary>
public sealed class LitterHeapTests(ITestOutputHelper output)
{
    // The accepted state; a change of the model shows here what it does, and is accepted by writing the new figure.
    private const double AcceptedError = 17.1;

    [Fact]
    public void Core_AgainstTheMiddleSensors_ErrsAsAccepted()
    {
        var run = Run();
        var (sum, n) = (0.0, 0);
        foreach (var (day, celsius) in Middle())
        {
            var at = Math.Max(1, FirstAtOrAfter(run, day));
            var share = (day - run.Days[at - 1]) / (run.Days[at] - run.Days[at - 1]);
            var core = run.Core[at - 1][0] + (share * (run.Core[at][0] - run.Core[at - 1][0]));
            sum += (core - celsius) * (core - celsius);
            n++;
        }

        var error = Math.Sqrt(sum / n);
        output.WriteLine(
            string.Create(CultureInfo.InvariantCulture, $"n {n}, root mean square {error:F2} °C")
        );
        Assert.InRange(error, AcceptedError - 0.2, AcceptedError + 0.2);
    }

    private static int FirstAtOrAfter(SimulationAnswer run, double day)
    {
        var i = 0;
        while (i < run.Days.Length - 1 && run.Days[i] < day)
        {
            i++;
        }

        return i;
    }

    private static SimulationAnswer Run()
    {
        var litter = PublishedHeaps.All.Single(h => h.Source == "kamp2024").Heap;
        return litter.Run(
            ParameterReader.Table,
            members: 1,
            weather: Weather(),
            events:
            [
                new Covered(6.03, Surroundings.Covers["lid"]),
                new Covered(34.04, Surroundings.Covers["none"]),
            ]
        );
    }

    private static Weather Weather()
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

    private static List<(double Day, double Celsius)> Middle()
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
        using var stream = typeof(LitterHeapTests).Assembly.GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
