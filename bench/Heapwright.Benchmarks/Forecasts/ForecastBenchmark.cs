using System.Diagnostics;
using System.Globalization;
using Heapwright.Benchmarks.Heaps;
using Heapwright.Core.Advice;
using Heapwright.Core.Forecasts;
using Heapwright.Core.Readings;
using Heapwright.Numerics.Sampling;
using UnitsNet;

namespace Heapwright.Benchmarks.Forecasts;

/// <summary>
/// From a reading to advice, and the nightly revision of many heaps: how long, how many heaps a core does in an hour, and
/// whether twice as many heaps take twice as long. The heaps differ in what was read; they are invented.
/// </summary>
internal static class ForecastBenchmark
{
    public static int Run(int heaps, int[] ages)
    {
        Answer(1, 7); // compiled
        Answer(2, 7);
        foreach (var age in ages)
        {
            var times = new double[heaps];
            for (var h = 0; h < heaps; h++)
            {
                var clock = Stopwatch.StartNew();
                Answer(h, age);
                times[h] = clock.Elapsed.TotalSeconds;
            }

            Array.Sort(times);
            Write(
                $"age {age} days: {heaps} heaps, median {times[heaps / 2]:0.00} s, 95th percentile {times[(int)(0.95 * (heaps - 1))]:0.00} s"
            );
        }

        foreach (var count in (int[])[heaps, 2 * heaps])
        {
            using var process = Process.GetCurrentProcess();
            var before = process.TotalProcessorTime;
            var clock = Stopwatch.StartNew();
            for (var h = 0; h < count; h++)
            {
                Answer(h, ages[h % ages.Length]);
            }

            process.Refresh();
            var busy = (process.TotalProcessorTime - before).TotalSeconds;
            Write(
                $"nightly revision of {count} heaps: {clock.Elapsed.TotalSeconds:0.0} s, {busy / count:0.00} s of a core each, {3600 * count / busy:0} heaps a core and hour"
            );
        }

        return 0;
    }

    private static void Answer(int heap, int age)
    {
        var question = HeapQuestions.Usual(200, 1, 0.03) with { Seed = 1 };
        var stream = new SplitMix64(SplitMix64.SeedFor((ulong)heap, "bench"));
        var peak = 45 + (20 * stream.NextUnit());
        var delay = 0.5 + (2 * stream.NextUnit());
        var readings = Enumerable
            .Range(1, age)
            .Select(d =>
            {
                var rise = 1 / (1 + Math.Exp(-3 * (d - delay)));
                var celsius =
                    15
                    + ((peak - 15) * rise * Math.Exp(-0.02 * d))
                    + (3 * (stream.NextUnit() - 0.5));
                return new ProbeReading(d - 0.25, Temperature.FromDegreesCelsius(celsius));
            });
        var forecast = Forecaster.Run(
            new ForecastQuestion
            {
                Heap = question,
                Readings = [.. readings],
                FromDay = age,
            }
        );
        var advice = Adviser.Advise(forecast, AdviceAim.SafeHeat, []);
        if (advice.IsEmpty)
        {
            throw new InvalidOperationException("no advice was given");
        }
    }

    private static void Write(FormattableString line) =>
        Console.WriteLine(line.ToString(CultureInfo.InvariantCulture));
}
