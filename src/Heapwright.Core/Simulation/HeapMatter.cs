using Heapwright.Core.Mixtures;

namespace Heapwright.Core.Simulation;

/// <summary>Matter on its way into a heap, of one member: what it holds and how its pieces behave.</summary>
/// <param name="Balance">kg and litres.</param>
/// <param name="Filled">m³ as filled, mixed and loose.</param>
/// <param name="Settling">Density added by settling where nothing else is done, share.</param>
/// <param name="RateSize">Particle size that sets rates, mm: the geometric mean over dry matter.</param>
/// <param name="PassageSize">Particle size that sets how air passes, mm: the geometric mean over volume.</param>
public readonly record struct HeapMatter(
    MassBalance Balance,
    double Filled,
    double Settling,
    double RateSize,
    double PassageSize
)
{
    // Sizes of the three classes of data/materials.csv, mm: estimates.
    private const double Fine = 5;
    private const double Medium = 25;
    private const double Coarse = 50;

    /// <summary>The matter of a mixture in one member.</summary>
    /// <param name="mixture">The mixture.</param>
    /// <param name="member">The member; −1 for everything at its typical value.</param>
    public static HeapMatter Of(Mixture mixture, int member)
    {
        ArgumentNullException.ThrowIfNull(mixture);
        var state =
            member < 0 ? mixture.Typical : mixture.Cases[Math.Min(member, mixture.Cases.Count - 1)];
        var (logs, weights, volumeLogs, volumes) = (0.0, 0.0, 0.0, 0.0);
        foreach (var part in mixture.Parts)
        {
            var size = SizeOf(part.Ingredient);
            var n = Math.Min(member, part.PerUnit.Count - 1);
            var one =
                member < 0
                    ? part.Typical * part.Ingredient.Amount.Typical
                    : part.PerUnit[n] * part.Amount[n];
            logs += one.DryMass * Math.Log(size);
            weights += one.DryMass;
            var volume = double.IsFinite(one.LooseVolume) ? one.LooseVolume : one.WetMass;
            volumeLogs += volume * Math.Log(size);
            volumes += volume;
        }

        var filled = double.IsFinite(state.FilledVolume) ? state.FilledVolume / 1000 : double.NaN;
        return new HeapMatter(
            state.Matter,
            filled,
            SettlingOf(state),
            weights > 0 ? Math.Exp(logs / weights) : Medium,
            volumes > 0 ? Math.Exp(volumeLogs / volumes) : Medium
        );
    }

    // By how much the gaps shrink where nothing holds them open; the rest of the volume is pieces and water.
    private static double SettlingOf(MixtureState state)
    {
        const double Unknown = 0.15;
        const double Most = 5;
        if (!double.IsFinite(state.SettledVolume))
        {
            return Unknown;
        }

        var solid = AirSpace.SolidAndWaterVolume(state.Matter);
        var before = Math.Max(state.FilledVolume - solid, 0);
        var after = Math.Max(state.SettledVolume - solid, before / (1 + Most));
        return after > 0 ? (before / after) - 1 : 0;
    }

    private static double SizeOf(Ingredient ingredient) =>
        ingredient.Material?.Particle switch
        {
            "fine" => Fine,
            "coarse" => Coarse,
            _ => Medium,
        };
}
