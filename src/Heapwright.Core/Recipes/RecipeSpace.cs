using System.Collections.Immutable;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;
using Heapwright.Numerics.Sampling;
using Heapwright.Numerics.Search;

namespace Heapwright.Core.Recipes;

/// <summary>All amounts that a question allows, drawn over its scenarios, and the searches over them.</summary>
internal sealed class RecipeSpace
{
    /// <summary>Steps into which an amount is divided that may be any fraction, where scenarios rule out a plain line.</summary>
    private const int StepsOfFraction = 20;

    /// <summary>The most of one stuff that is bought where neither a limit nor a volume is set, litres.</summary>
    private const double MostBought = 4000;

    private readonly RecipeQuestion question;
    private readonly double[] factors;
    private readonly double factor;

    public RecipeSpace(RecipeQuestion question)
    {
        this.question = question;
        Exact = IsExact(question);
        var points = new QuasiRandomSet(Exact ? 1 : RecipeQuestion.Scenarios, question.Seed);
        var spread = FactorOf(question);
        var u = new double[points.Count];
        points.Block("mixture").Fill(1, u);
        factors = spread.Sample(u, SpreadScale.Positive);
        factor = spread.Typical;
        Variables = [.. Standing(points), .. question.Items.SelectMany(i => Variable(i, points))];
    }

    /// <summary>Whether the question holds nothing uncertain.</summary>
    public bool Exact { get; }

    /// <summary>The amounts to decide; a standing heap, if any, is the first, fixed at one.</summary>
    public ImmutableArray<RecipeVariable> Variables { get; }

    /// <summary>Shape [scenario]: filled volume over loose sum.</summary>
    public IReadOnlyList<double> Factors => factors;

    /// <summary>Filled volume over loose sum at the typical values.</summary>
    public double Factor => factor;

    /// <summary>The factor as assumed or given.</summary>
    public static Spread FactorOf(RecipeQuestion question)
    {
        if (question.MixingVolumeFactor is { } given)
        {
            return given;
        }

        var one =
            question.Onto is null
            && question.Items.Select(i => i.Ingredient.Key).Distinct(StringComparer.Ordinal).Count()
                < 2;
        return one ? Spread.Exact(1)
            : IsExact(question) ? Spread.Exact(MixtureAssumptions.MixingVolumeFactor.Typical)
            : MixtureAssumptions.MixingVolumeFactor;
    }

    /// <summary>Filled litres of some amounts at the typical values.</summary>
    public double FilledVolume(ReadOnlySpan<double> steps)
    {
        double litres = 0;
        for (var i = 0; i < Variables.Length; i++)
        {
            litres += Variables[i].Litres * steps[i];
        }

        return litres * factor;
    }

    /// <summary>The search problem for a set of conditions and up to three objectives, first things first.</summary>
    public ChanceProblem Problem(ConditionSet set, params Func<RecipeVariable, double>[] objectives)
    {
        var rows = new List<(Func<MassBalance, double, double> Coefficient, double Slope)>();
        AddRatio(rows, set.CarbonNitrogen, m => m.Carbon);
        AddRatio(rows, set.AvailableCarbonNitrogen, m => m.AvailableCarbon);
        AddMoisture(rows, set.Moisture);
        AddAir(rows, set.Air);

        var n = Variables.Length;
        var scenarios = Exact ? 0 : factors.Length;
        var nominal = new double[rows.Count * n];
        var cases = new double[rows.Count * n * scenarios];
        for (var r = 0; r < rows.Count; r++)
        {
            for (var i = 0; i < n; i++)
            {
                nominal[(r * n) + i] = rows[r].Coefficient(Variables[i].Typical, factor);
                for (var s = 0; s < scenarios; s++)
                {
                    cases[(((r * n) + i) * scenarios) + s] = rows[r]
                        .Coefficient(Variables[i].Cases[s], factors[s]);
                }
            }
        }

        var limits = new List<(Func<RecipeVariable, double> Coefficient, double Limit)>();
        if (set.MostVolume is { } most)
        {
            limits.Add((v => v.Litres * factor, most));
        }

        if (set.LeastVolume is { } least)
        {
            limits.Add((v => -v.Litres * factor, -least));
        }

        if (set.MostCost is { } cost)
        {
            limits.Add((v => v.Price, cost));
        }

        if (set.StiffShare is { } stiff)
        {
            limits.Add((v => (stiff / 100 * v.Litres) - v.Typical.StiffVolume, 0));
        }

        var moisture = ((set.Moisture?.Low ?? 50) + (set.Moisture?.High ?? 60)) / 200;
        return new ChanceProblem
        {
            Lower = [.. Variables.Select(v => v.Least)],
            Upper = [.. Variables.Select(v => v.Most)],
            Continuous = Variables.Any(v => v.IsContinuous)
                ? [.. Variables.Select(v => v.IsContinuous)]
                : [],
            Objectives = [.. objectives.Select(o => Variables.Select(o).ToArray())],
            FreeSlopes = [.. rows.Select(r => r.Slope)],
            Nominal = nominal,
            ScenarioCount = scenarios,
            Scenarios = cases,
            Chance = set.Chance,
            LimitCoefficients = [.. limits.SelectMany(l => Variables.Select(l.Coefficient))],
            Limits = [.. limits.Select(l => l.Limit)],
            FreeMaximum = Math.Max(1, 6 * Variables.Sum(v => v.Typical.DryMass * v.Most)),
            FreePreferredSlopes =
            [
                .. Variables.Select(v =>
                    ((moisture * v.Typical.WetMass) - v.Typical.Water) / (1 - moisture)
                ),
            ],
        };
    }

    private static void AddRatio(
        List<(Func<MassBalance, double, double>, double)> rows,
        Band? band,
        Func<MassBalance, double> carbon
    )
    {
        if (band?.Low is { } low)
        {
            rows.Add(((m, _) => carbon(m) - (low * m.Nitrogen), 0));
        }

        if (band?.High is { } high)
        {
            rows.Add(((m, _) => (high * m.Nitrogen) - carbon(m), 0));
        }
    }

    private static void AddMoisture(
        List<(Func<MassBalance, double, double>, double)> rows,
        Band? band
    )
    {
        if (band?.Low is { } low)
        {
            rows.Add(((m, _) => m.Water - (low / 100 * m.WetMass), 1 - (low / 100)));
        }

        if (band?.High is { } high)
        {
            rows.Add(((m, _) => (high / 100 * m.WetMass) - m.Water, (high / 100) - 1));
        }
    }

    private static void AddAir(List<(Func<MassBalance, double, double>, double)> rows, Band? band)
    {
        // A litre of water takes a litre of air: slope −1 for a least air, +1 for a most.
        if (band?.Low is { } low)
        {
            rows.Add(
                (
                    (m, f) =>
                        ((1 - (low / 100)) * f * m.LooseVolume) - AirSpace.SolidAndWaterVolume(m),
                    -1
                )
            );
        }

        if (band?.High is { } high)
        {
            rows.Add(
                (
                    (m, f) =>
                        AirSpace.SolidAndWaterVolume(m) - ((1 - (high / 100)) * f * m.LooseVolume),
                    1
                )
            );
        }
    }

    private static bool IsExact(RecipeQuestion question) =>
        question.MixingVolumeFactor is null or { IsExact: true }
        && question.Items.All(i => ExactParts(i.Ingredient))
        && (question.Onto?.Ingredients.All(i => ExactParts(i) && i.Amount.IsExact) ?? true);

    private static bool ExactParts(Ingredient ingredient) =>
        new MixtureQuestion
        {
            Ingredients = [ingredient with { Amount = Spread.Exact(1) }],
        }.IsExact;

    private IEnumerable<RecipeVariable> Variable(RecipeItem item, QuasiRandomSet points)
    {
        var most = item.Ingredient.Amount.Typical;
        if (most <= 0)
        {
            yield break;
        }

        var drawn = IngredientSample.Draw(item.Ingredient, points);
        // No single stuff can be more than the whole heap; without a heap's size, purchases have some end.
        var room =
            RecipeLevels.MostVolume(question)
            ?? (item.IsPurchase ? MostBought : double.PositiveInfinity);
        if (!item.MustUse)
        {
            most = Math.Min(most, room / (factor * drawn.Typical.LooseVolume));
        }

        double step = 1;
        double least = 0;
        var continuous = false;
        if (item.MustUse)
        {
            (step, least, most) = (most, 1, 1);
        }
        else if (item.Whole)
        {
            most = Math.Floor(most + 1e-9);
            if (most < 1)
            {
                yield break;
            }
        }
        else if (Exact && question.Items.Count(i => !i.Whole) <= ChanceProblem.MostContinuous)
        {
            continuous = true;
        }
        else
        {
            (step, most) = (most / StepsOfFraction, StepsOfFraction);
        }

        yield return new RecipeVariable(
            item,
            step,
            least,
            most,
            continuous,
            drawn.Typical * step,
            [.. drawn.PerUnit.Select(b => b * step)]
        );
    }

    private IEnumerable<RecipeVariable> Standing(QuasiRandomSet points)
    {
        if (question.Onto is not { } heap)
        {
            yield break;
        }

        var drawn = heap.Ingredients.Select(i => IngredientSample.Draw(i, points)).ToArray();
        MassBalance Aged(MassBalance fresh)
        {
            var aged = heap.Aged(fresh);
            // What stands has its volume as measured; the loose volumes are brought to it, mixing factor undone. Where an
            // amount may be next to nothing, so may the volume be by which they are shared out.
            var loose = heap.Volume / factor;
            double Of(double part) =>
                fresh.LooseVolume > 0 ? loose * (part / fresh.LooseVolume) : 0;
            return aged with
            {
                LooseVolume = loose,
                StiffVolume = Of(fresh.StiffVolume),
                UnsupportedVolume = Of(fresh.UnsupportedVolume),
            };
        }

        var typical = default(MassBalance);
        var cases = new MassBalance[points.Count];
        foreach (var part in drawn)
        {
            typical += part.Typical * part.Ingredient.Amount.Typical;
            for (var s = 0; s < cases.Length; s++)
            {
                cases[s] += part.PerUnit[s] * part.Amount[s];
            }
        }

        var item = new RecipeItem { Ingredient = heap.Ingredients[0] with { Name = "" } };
        yield return new RecipeVariable(
            item,
            1,
            1,
            1,
            false,
            Aged(typical),
            [.. cases.Select(Aged)]
        );
    }
}
