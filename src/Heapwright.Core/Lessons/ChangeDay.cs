using Heapwright.Core.Simulation;

namespace Heapwright.Core.Lessons;

/// <summary>When two heaps begin to be treated differently.</summary>
internal static class ChangeDay
{
    /// <summary>The day; 0 where they were built differently, null where nothing differs.</summary>
    /// <param name="a">A heap.</param>
    /// <param name="b">Another one.</param>
    public static double? Of(SimulationQuestion a, SimulationQuestion b)
    {
        if (HeapDifferences.Of(a, b).Any(d => !d.IsSame && d.IsOfBuilding))
        {
            return 0;
        }

        HeapEvent[] left = [.. a.Events.OrderBy(e => e.Day)];
        HeapEvent[] right = [.. b.Events.OrderBy(e => e.Day)];
        for (var k = 0; k < Math.Max(left.Length, right.Length); k++)
        {
            if (k >= left.Length || k >= right.Length)
            {
                return (k < left.Length ? left : right)[k].Day;
            }

            if (!HeapDifferences.IsSame(left[k], right[k]))
            {
                return Math.Min(left[k].Day, right[k].Day);
            }
        }

        return null;
    }
}
