namespace Heapwright.Numerics.Search;

/// <summary>The best different amounts met so far, by all objectives in order; the first entry is fixed.</summary>
internal sealed class RankedList(PreparedProblem p, int most, double[] first)
{
    private readonly List<double[]> _entries = [first];

    internal IReadOnlyList<double[]> Entries => _entries;

    internal bool Full => _entries.Count >= most;

    /// <summary>First objective of the last entry.</summary>
    internal double Worst => p.Objective(0, _entries[^1]);

    internal double[] Values(double[] x) =>
        [.. Enumerable.Range(0, p.Source.Objectives.Length).Select(o => p.Objective(o, x))];

    internal void Add(double[] x)
    {
        // The same point can turn up in several slices.
        if (_entries.Exists(e => e.AsSpan().SequenceEqual(x)))
        {
            return;
        }

        double[] value = Values(x);
        int at = _entries.Count;
        while (at > 1 && Before(value, Values(_entries[at - 1])))
        {
            at--;
        }

        _entries.Insert(at, (double[])x.Clone());
        if (_entries.Count > most)
        {
            _entries.RemoveAt(_entries.Count - 1);
        }
    }

    private static bool Before(double[] a, double[] b)
    {
        for (int o = 0; o < a.Length; o++)
        {
            if (Math.Abs(a[o] - b[o]) > PreparedProblem.Width(b[o]))
            {
                return a[o] < b[o];
            }
        }

        return false;
    }
}
