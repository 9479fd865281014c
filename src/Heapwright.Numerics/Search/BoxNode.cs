namespace Heapwright.Numerics.Search;

/// <summary>
/// One box of the tree: bounds of the amounts, a slice of each of the two cones, and what is known about it. Nodes live on a
/// stack by depth and are reused.
/// </summary>
internal sealed class BoxNode
{
    /// <summary>Most certificates carried to the children.</summary>
    internal const int MostCertificates = 6;

    /// <summary>Most witnesses carried to the children.</summary>
    internal const int MostWitnesses = 12;

    internal BoxNode(PreparedProblem p, LinearForms forms, int padded)
    {
        Low = new double[p.N];
        High = new double[p.N];
        OwnForms = new double[forms.Values.Length];
        Forms = OwnForms;
        Least = new float[padded];
        Safe = new ulong[(padded + 63) / 64];
        Reach = new float[MostCertificates][];
        Rows = new double[MostCertificates][];
        Lambda = new double[MostCertificates][];
        Mu = new float[MostCertificates][];
        for (int c = 0; c < MostCertificates; c++)
        {
            Reach[c] = new float[padded];
            Rows[c] = new double[p.R];
            Lambda[c] = new double[forms.Count];
            Mu[c] = new float[p.N];
        }

        Witness = new float[MostWitnesses][];
        WitnessHolds = new ulong[MostWitnesses][];
        for (int k = 0; k < MostWitnesses; k++)
        {
            Witness[k] = new float[p.N + 1];
            WitnessHolds[k] = new ulong[Safe.Length];
        }
    }

    internal double[] Low { get; }

    internal double[] High { get; }

    /// <summary>Slice of the first cone.</summary>
    internal (double From, double To) SliceA { get; set; }

    /// <summary>Slice of the second cone.</summary>
    internal (double From, double To) SliceB { get; set; }

    /// <summary>The forms with this node's slices: its own array, or that of the ancestor that made the last slice.</summary>
    internal double[] Forms { get; set; }

    internal double[] OwnForms { get; }

    /// <summary>Smallest bound known on what each scenario can still reach, [scenario]; below 0 the scenario is lost here.</summary>
    internal float[] Least { get; }

    /// <summary>Number of lost scenarios.</summary>
    internal int Lost { get; set; }

    /// <summary>Bits of scenarios that some point of the box is known to satisfy.</summary>
    internal ulong[] Safe { get; }

    internal int Certificates { get; set; }

    /// <summary>How often the bounds of the oldest certificates were carried over to a smaller box since they were worked out.</summary>
    internal int Narrowings { get; set; }

    /// <summary>Bound of each certificate per scenario, [certificate][scenario].</summary>
    internal float[][] Reach { get; }

    /// <summary>Multipliers of the scenario rows, [certificate][row].</summary>
    internal double[][] Rows { get; }

    /// <summary>Multipliers of the forms, [certificate][form].</summary>
    internal double[][] Lambda { get; }

    /// <summary>What the forms add to the coefficient of each variable, [certificate][variable].</summary>
    internal float[][] Mu { get; }

    internal int Witnesses { get; set; }

    /// <summary>Points of the box with their w, [witness][variable…, w].</summary>
    internal float[][] Witness { get; }

    /// <summary>Bits of the scenarios that each witness satisfies.</summary>
    internal ulong[][] WitnessHolds { get; }
}
