using System.Globalization;
using Heapwright.Core.Simulation;

namespace Heapwright.Benchmarks.Heaps;

/// <summary>What the grid and the step leave in error: the core against a finer grid and against tight tolerance.</summary>
internal static class HeapConvergence
{
    public static void Print()
    {
        foreach (var name in new[] { "usual", "cold", "small", "ring", "windrow" })
        {
            var (rough, tight) = (
                Run(HeapQuestions.Of(name, 200, 1, 0.03)),
                Run(HeapQuestions.Of(name, 200, 1, 0.001))
            );
            var worst = Members(rough, tight, d => d.Max(Math.Abs)).Order().ToArray();
            Say(
                $"{name}: tolerance 0.03 K against 0.001 K, 200 members: greatest difference of a member, median {worst[100]:F4}, worst {worst[^1]:F3} C; within 0.1 C {worst.Count(w => w <= 0.1) / 2.0:F1} %; {rough.Steps} steps of all blocks"
            );
            var (usual, fine) = (
                Run(HeapQuestions.Of(name, 8, 1, 0.03)),
                Run(HeapQuestions.Of(name, 8, 3, 0.03))
            );
            var rms = Members(usual, fine, d => Math.Sqrt(d.Average(e => e * e))).ToArray();
            Say(
                $"{name}: {usual.Grid.Zones} zones against {fine.Grid.Zones}, 8 members: root mean square of the core's difference, median {rms.Order().ElementAt(4):F2}, worst {rms.Max():F2} C"
            );
        }
    }

    private static SimulationAnswer Run(SimulationQuestion question) =>
        HeapSimulation.Run(question);

    private static IEnumerable<double> Members(
        SimulationAnswer one,
        SimulationAnswer other,
        Func<double[], double> measure
    ) =>
        Enumerable
            .Range(0, one.Core[0].Length)
            .Select(m => measure([.. one.Core.Zip(other.Core, (a, b) => a[m] - b[m])]));

    private static void Say(FormattableString text) =>
        Console.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
