using System.Diagnostics;
using System.Globalization;
using System.Runtime.Intrinsics;
using Heapwright.Core.Amounts;
using Heapwright.Core.Bins;
using Heapwright.Core.Forecasts;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;
using Heapwright.Core.Readings;
using Heapwright.Core.Simulation;
using Heapwright.Core.Tests.Materials;
using UnitsNet;

namespace Heapwright.Core.Tests.Simulation;

/// <summary>
/// One simulation in processes of their own, with few and many threads and with narrower vectors. The child is this
/// test assembly, asked for the one test that writes down what it found.
/// </summary>
public class SameBitsTests
{
    private const string FileVariable = "HEAPWRIGHT_TEST_CORE_FILE";

    [Fact]
    public void Child_Simulation_IsFinite()
    {
        double[] core = [.. Core(), .. Forecast()];
        Assert.All(core, c => Assert.InRange(c, -20, 100));
        if (Environment.GetEnvironmentVariable(FileVariable) is { } file)
        {
            // A child that is to do without wide vectors must not have them.
            Assert.NotEqual(
                "0",
                Vector512.IsHardwareAccelerated
                    ? Environment.GetEnvironmentVariable("DOTNET_EnableAVX512")
                    : null
            );
            Assert.NotEqual(
                "0",
                Vector256.IsHardwareAccelerated
                    ? Environment.GetEnvironmentVariable("DOTNET_EnableAVX2")
                    : null
            );
            File.WriteAllLines(
                file,
                core.Select(c => c.ToString("R", CultureInfo.InvariantCulture))
            );
        }
    }

    [Theory]
    [InlineData("1")]
    [InlineData("2")]
    [InlineData("4")]
    public void Run_OtherNumberOfThreads_GivesTheSameBits(string processors) =>
        Assert.Equal([.. Core(), .. Forecast()], ChildCore(("DOTNET_PROCESSOR_COUNT", processors)));

    [Theory]
    [InlineData("DOTNET_EnableAVX512")]
    [InlineData("DOTNET_EnableAVX2")]
    public void Run_NarrowerVectors_AgreeWithinAThousandthOfAKelvin(string without)
    {
        // The same operations in the same order; where multiplication and addition are not fused they round once more.
        // A difference in rounding grows while the heap takes off, and shrinks after.
        var wide = Core();
        var narrow = ChildCore((without, "0"));
        Assert.True(narrow.Length >= wide.Length); // after the simulation comes the forecast
        for (var i = 0; i < wide.Length; i++)
        {
            Assert.InRange(narrow[i] - wide[i], -1e-3, 1e-3);
        }
    }

    /// <summary>A heap of usual stuff, turned once.</summary>
    internal static SimulationQuestion Question() =>
        new()
        {
            Bin = Bin.Box(Length.FromMeters(1), Length.FromMeters(1), Length.FromMeters(1)),
            Mixture = new MixtureQuestion
            {
                Ingredients =
                [
                    new Ingredient
                    {
                        Name = "stuff",
                        Properties = Stuff.Usual,
                        Amount = Spread.Exact(1200),
                        Unit = MeasureUnits.Find("l")!,
                    },
                ],
                Water = Spread.Exact(80),
            },
            Parameters = ShippedParameters.Table,
            Weather = Weather.Steady(new WeatherMoment(15, 1, 0, 0.7, 0), 5),
            Days = 8,
            Members = 40,
            Events = [new Turned(4, 0.8, TurnedPart.All)],
        };

    private static double[] Core() => [.. HeapSimulation.Run(Question()).Core.SelectMany(c => c)];

    // The whole way from readings to a forecast.
    private static double[] Forecast() =>
        [
            .. Forecaster
                .Run(
                    new ForecastQuestion
                    {
                        Heap = Question(),
                        Readings =
                        [
                            .. new[] { 24.0, 51, 60, 62 }.Select(
                                (c, d) =>
                                    new ProbeReading(d + 0.5, Temperature.FromDegreesCelsius(c))
                            ),
                        ],
                        FromDay = 3.5,
                        AheadDays = 3,
                        DecisionDays = 3,
                    }
                )
                .Core.SelectMany(c => c),
        ];

    private static double[] ChildCore(params (string Name, string Value)[] settings)
    {
        var file = Path.GetTempFileName();
        try
        {
            var start = new ProcessStartInfo("dotnet")
            {
                UseShellExecute = false,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            };
            start.ArgumentList.Add(typeof(SameBitsTests).Assembly.Location);
            start.ArgumentList.Add("-method");
            start.ArgumentList.Add("*." + nameof(Child_Simulation_IsFinite));
            start.Environment[FileVariable] = file;
            foreach (var (name, value) in settings)
            {
                start.Environment[name] = value;
            }

            using var child = Process.Start(start)!;
            var error = child.StandardError.ReadToEndAsync();
            var output = child.StandardOutput.ReadToEnd();
            child.WaitForExit();
            Assert.True(child.ExitCode == 0, output + error.GetAwaiter().GetResult());
            return
            [
                .. File.ReadLines(file).Select(l => double.Parse(l, CultureInfo.InvariantCulture)),
            ];
        }
        finally
        {
            File.Delete(file);
        }
    }
}
