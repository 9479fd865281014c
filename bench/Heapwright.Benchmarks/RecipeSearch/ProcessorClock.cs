using System.Diagnostics;

namespace Heapwright.Benchmarks.RecipeSearch;

/// <summary>Processor time of this process: what a solve costs, whatever else the machine is doing.</summary>
internal static class ProcessorClock
{
    /// <summary>Milliseconds so far, all threads.</summary>
    internal static double Milliseconds
    {
        get
        {
            using var process = Process.GetCurrentProcess();
            return process.TotalProcessorTime.TotalMilliseconds;
        }
    }
}
