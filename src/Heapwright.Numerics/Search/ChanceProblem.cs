namespace Heapwright.Numerics.Search;

/// <summary>
/// A small optimisation over amounts x and one free quantity w, with linear rows that must hold in a nominal case and,
/// jointly and at the same w, in a wanted share of scenarios.
/// <para>
/// minimise c₁·x, ties by c₂·x, then c₃·x, over x in [Lower, Upper] (whole numbers unless flagged continuous), x ≠ 0, such that
/// (a) LimitCoefficients·x ≤ Limits, and (b) there is one w in [0, FreeMaximum] at which every nominal row
/// Σᵢ Nominal[r,i]·xᵢ + FreeSlopes[r]·w ≥ 0 holds and at least ⌈Chance·ScenarioCount⌉ scenarios have all their rows
/// Σᵢ Scenarios[r,i,s]·xᵢ + FreeSlopes[r]·w ≥ 0 satisfied.
/// </para>
/// <para>
/// Rounding: a row counts as satisfied down to −1e-9·maxᵢ|coefficient of that row and scenario|, a limit up to
/// +1e-9·max(|limit|, maxᵢ|coefficient|). Objectives closer than 1e-9·max(1, |value|) are equal.
/// </para>
/// </summary>
public sealed class ChanceProblem
{
    /// <summary>Largest number of variables.</summary>
    public const int MostVariables = 64;

    /// <summary>Largest number of continuous variables.</summary>
    public const int MostContinuous = 12;

    /// <summary>Largest number of rows, and of limits.</summary>
    public const int MostRows = 32;

    /// <summary>Largest number of scenarios.</summary>
    public const int MostScenarios = 1024;

    /// <summary>Largest upper bound of a variable.</summary>
    public const double LargestAmount = 1e6;

    /// <summary>Least amounts, [variable], 0 ≤ Lower ≤ Upper; whole numbers where the variable is whole.</summary>
    public required double[] Lower { get; init; }

    /// <summary>Most amounts, [variable], at most <see cref="LargestAmount"/>; whole numbers where the variable is whole.</summary>
    public required double[] Upper { get; init; }

    /// <summary>True for variables that may take any value between their bounds, [variable]; empty: all are whole.</summary>
    public bool[] Continuous { get; init; } = [];

    /// <summary>One to three objectives to minimise, first things first, each [variable].</summary>
    public required double[][] Objectives { get; init; }

    /// <summary>Slope d of every row in the free quantity, [row]; the same in all scenarios. 0: the row does not see w.</summary>
    public required double[] FreeSlopes { get; init; }

    /// <summary>Row coefficients of the nominal case, [row, variable], row-major.</summary>
    public required double[] Nominal { get; init; }

    /// <summary>Number of scenarios, 0 to <see cref="MostScenarios"/>.</summary>
    public int ScenarioCount { get; init; }

    /// <summary>Row coefficients of the scenarios, [row, variable, scenario], scenario fastest.</summary>
    public double[] Scenarios { get; init; } = [];

    /// <summary>Share of the scenarios that must hold, 0 to 1.</summary>
    public double Chance { get; init; } = 1;

    /// <summary>Coefficients of the rows without uncertainty, [limit, variable], row-major.</summary>
    public double[] LimitCoefficients { get; init; } = [];

    /// <summary>Upper limits of the rows without uncertainty, [limit]. A minimum is given with both signs turned.</summary>
    public double[] Limits { get; init; } = [];

    /// <summary>Most of the free quantity, finite, ≥ 0. 0 means there is none.</summary>
    public double FreeMaximum { get; init; }

    /// <summary>Constant part of the free quantity one would like best (see <see cref="FreePreferredSlopes"/>).</summary>
    public double FreePreferred { get; init; }

    /// <summary>Part of the preferred free quantity per amount, [variable]; empty: none. Preferred w = FreePreferred + Σ FreePreferredSlopes[i]·xᵢ.</summary>
    public double[] FreePreferredSlopes { get; init; } = [];

    /// <summary>Number of variables.</summary>
    public int Variables => Lower.Length;

    /// <summary>Number of rows.</summary>
    public int Rows => FreeSlopes.Length;

    /// <summary>Number of scenarios that must hold: ⌈Chance·ScenarioCount⌉ (a product within 1e-9 above a whole number counts as it).</summary>
    public int ScenariosNeeded => (int)Math.Ceiling((Chance * ScenarioCount) - 1e-9);

    /// <summary>True if variable <paramref name="i"/> may take fractions.</summary>
    public bool IsContinuous(int i) => Continuous.Length > 0 && Continuous[i];

    /// <summary>The same problem with the nominal case as its only scenario: what is left of it when no scenario must hold.</summary>
    internal ChanceProblem NominalOnly() =>
        new()
        {
            Lower = Lower,
            Upper = Upper,
            Continuous = Continuous,
            Objectives = Objectives,
            FreeSlopes = FreeSlopes,
            Nominal = Nominal,
            ScenarioCount = 1,
            Scenarios = Nominal,
            Chance = 1,
            LimitCoefficients = LimitCoefficients,
            Limits = Limits,
            FreeMaximum = FreeMaximum,
            FreePreferred = FreePreferred,
            FreePreferredSlopes = FreePreferredSlopes,
        };

    /// <summary>Refuses sizes that do not fit together, NaN, infinities and bounds outside their range.</summary>
    /// <exception cref="ArgumentException">Names the field, the value found and what is allowed.</exception>
    public void Check() => ChanceProblemCheck.Check(this);
}
