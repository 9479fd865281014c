using System.Runtime.Intrinsics;

namespace Heapwright.Core.Simulation;

/// <summary>What was seen of a block at each time.</summary>
/// <param name="Day">Days since building.</param>
/// <param name="Celsius">Shape [zone].</param>
/// <param name="Dry">Shape [zone]: kg.</param>
/// <param name="Fast">kg of what rots in the first hot days.</param>
/// <param name="Water">kg.</param>
/// <param name="Oxygen">Mole fraction in the pores of the core.</param>
/// <param name="Height">m, in the middle.</param>
/// <param name="Volume">m³.</param>
internal sealed record HeapLook(
    double Day,
    Vector512<double>[] Celsius,
    Vector512<double>[] Dry,
    Vector512<double> Fast,
    Vector512<double> Water,
    Vector512<double> Oxygen,
    Vector512<double> Height,
    Vector512<double> Volume
)
{
    /// <summary>The share of the heap that had not been taken away.</summary>
    public double Left { get; init; } = 1;

    /// <summary>What rots in the first hot days, kg, as if nothing had been taken away: what is taken is not rotted.</summary>
    /// <param name="lane">The member.</param>
    public double FastOf(int lane) => Fast[lane] / Left;

    /// <summary>Dry matter of a member, kg.</summary>
    /// <param name="lane">The member.</param>
    public double DryOf(int lane)
    {
        var sum = 0.0;
        foreach (var dry in Dry)
        {
            sum += dry[lane];
        }

        return sum;
    }

    /// <summary>Moisture of the whole of a member, % of wet mass.</summary>
    /// <param name="lane">The member.</param>
    public double MoistureOf(int lane) => 100 * Water[lane] / (Water[lane] + DryOf(lane));
}
