using System.Globalization;
using Heapwright.App.Library;
using Heapwright.Core.Simulation;

namespace Heapwright.Validation.Simulation;

/// <summary>
/// A measured heap of broiler litter with its own hourly weather and covers (kamp2024, CC BY 4.0, reshaped), predicted
/// blind. Volume and footprint are not published; 40 m³ follows from 22 t at 550 kg/m³, our estimate.
/// </summary>
public sealed class LitterHeapTests(ITestOutputHelper output)
{
    // The accepted state; a change of the model shows here what it does, and is accepted by writing the new figure.
    private const double AcceptedError = 8.0;

    [Fact]
    public void Core_AgainstTheMiddleSensors_ErrsAsAccepted()
    {
        var run = LitterHeap.Case.Run(
            ParameterReader.Table,
            members: 1,
            weather: LitterHeap.Weather(),
            events: [.. LitterHeap.Events]
        );
        var (sum, n) = (0.0, 0);
        foreach (var (day, celsius) in LitterHeap.Middle())
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
}
