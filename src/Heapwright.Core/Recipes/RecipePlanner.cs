using System.Collections.Immutable;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;
using Heapwright.Core.Reasons;
using Heapwright.Numerics.Search;
using UnitsNet;

namespace Heapwright.Core.Recipes;

/// <summary>
/// Finds what to build from what is there: the asker's conditions are kept, the usual aims as far as they can be, and
/// among what is left the aim decides. Every search is exact over its scenarios and says whether it was finished.
/// </summary>
public static partial class RecipePlanner
{
    private const int MostPlans = 3;

    /// <summary>Plans a recipe.</summary>
    /// <param name="question">What is there and what is wanted.</param>
    /// <param name="fetchable">Materials that could be fetched, by what they mend (see <see cref="FetchFirst"/>).</param>
    public static RecipeAnswer Plan(RecipeQuestion question, FetchFirst fetchable)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(fetchable);
        var space = new RecipeSpace(question);
        if (!space.Variables.Any(v => v.Item.Ingredient.Name.Length > 0))
        {
            return new RecipeAnswer { Status = RecipeStatus.Cannot, Bands = question.Bands };
        }

        var levels = RecipeLevels.For(question, space);
        var effort = new SearchEffort(question.Nodes, space.Variables.Length);
        for (var level = 0; level < levels.Count; level++)
        {
            var found = Search(effort, space, levels[level], question.Aim);
            if (found.Amounts.Length > 0)
            {
                return Found(question, space, levels, level, found, fetchable, effort);
            }
        }

        return Nearest(question, space, levels, fetchable);
    }

    private static RecipeAnswer Found(
        RecipeQuestion question,
        RecipeSpace space,
        IReadOnlyList<ConditionSet> levels,
        int level,
        ChanceAnswer first,
        FetchFirst fetchable,
        SearchEffort effort
    )
    {
        var set = levels[level];
        var best = Plan(question, space, set, first, question.Aim);
        var plans = new List<RecipePlan> { best };
        foreach (var (otherSet, aim) in Others(question, levels, level))
        {
            if (plans.Count == MostPlans)
            {
                break;
            }

            var other = Search(effort, space, otherSet, aim);
            if (other.Amounts.Length == 0)
            {
                continue;
            }

            var plan = Plan(question, space, otherSet, other, aim);
            if (plans.TrueForAll(p => DiffersInKind(p, plan)))
            {
                plans.Add(plan);
            }
        }

        var sound = question.Bands.AnyCondition || IsSound(best);
        return new RecipeAnswer
        {
            Status = sound ? RecipeStatus.Ok : RecipeStatus.FallsShort,
            Plans = [.. plans],
            Shortfalls = sound ? [] : Shortfalls.Of(question, best, set, fetchable),
            MeasureNext = MeasureNext.For(question, space, set, first.Amounts),
            LeftOver = LeftOver(question, best),
            Bands = question.Bands,
        };
    }

    // What else is worth showing: the same stuff with a purchase that makes it better, then the other aims.
    private static IEnumerable<(ConditionSet Set, RecipeAim Aim)> Others(
        RecipeQuestion question,
        IReadOnlyList<ConditionSet> levels,
        int level
    )
    {
        var set = levels[level];
        if (set.MostCost is 0)
        {
            yield return (levels[levels.Count / 2], question.Aim);
        }

        foreach (var aim in Enum.GetValues<RecipeAim>().Where(a => a != question.Aim))
        {
            yield return (set, aim);
        }
    }

    private static RecipeAnswer Nearest(
        RecipeQuestion question,
        RecipeSpace space,
        IReadOnlyList<ConditionSet> levels,
        FetchFirst fetchable
    )
    {
        // The conditions with the widest aims, and as full as was wanted first.
        var set = question.Bands.AnyCondition
            ? RecipeLevels.Conditions(question)
            : levels[^1] with
            {
                LeastVolume = question.LeastVolume ?? levels[0].LeastVolume,
            };
        var nearest = ChanceSearch.NearestToFeasible(space.Problem(set, v => -v.Litres));
        if (!nearest.Amounts.Any(a => a > 0))
        {
            return new RecipeAnswer { Status = RecipeStatus.Cannot, Bands = question.Bands };
        }

        var water = ChosenWater.Of(space, set, nearest.Amounts, nearest.Free);
        var plan = Plan(question, space, nearest.Amounts, water, proven: false, aim: null);
        var asked =
            question.Bands.AnyCondition
            || question.LeastVolume is not null
            || question.MostVolume is not null;
        var sound = !asked && IsSound(plan);
        var shortfalls = Shortfalls.Of(question, plan, set, fetchable);
        if (!sound && shortfalls.IsEmpty && plan.Chance.All < set.Chance)
        {
            // Nothing is missing in kilograms or litres: it is the sureness that is.
            plan = plan with
            {
                Notes = plan.Notes.Insert(
                    1,
                    Reason.Of("recipes.chance_short", 100 * plan.Chance.All, 100 * set.Chance)
                ),
            };
        }

        return new RecipeAnswer
        {
            Status = sound ? RecipeStatus.Ok : RecipeStatus.FallsShort,
            Plans = [plan],
            Shortfalls = shortfalls,
            MeasureNext = MeasureNext.For(question, space, set, nearest.Amounts),
            LeftOver = LeftOver(question, plan),
            Bands = question.Bands,
        };
    }

    private static ChanceAnswer Search(
        SearchEffort effort,
        RecipeSpace space,
        ConditionSet set,
        RecipeAim aim
    )
    {
        var answer = ChanceSearch.Solve(
            space.Problem(set, Objectives(aim)),
            SearchBudget.Default with
            {
                Nodes = effort.Next,
            }
        );
        effort.Spend(answer.Nodes);
        return answer;
    }

    private static Func<RecipeVariable, double>[] Objectives(RecipeAim aim)
    {
        static double Used(RecipeVariable v) => v.Item.IsPurchase ? 0 : -v.Litres;
        return aim switch
        {
            RecipeAim.LeastCost => [v => v.Price, Used, v => v.Minutes],
            RecipeAim.AllThroughHeat => [v => -v.Litres, v => v.Price, v => -v.Perishing],
            RecipeAim.LeastWork => [v => v.Minutes, v => v.Price, v => -v.Perishing],
            _ => [Used, v => v.Price, v => -v.Perishing],
        };
    }

    private static RecipePlan Plan(
        RecipeQuestion question,
        RecipeSpace space,
        ConditionSet set,
        ChanceAnswer found,
        RecipeAim aim
    ) =>
        Plan(
            question,
            space,
            found.Amounts,
            ChosenWater.Of(space, set, found.Amounts, found.Free),
            found.ProvenBest,
            aim
        );

    private static RecipePlan Plan(
        RecipeQuestion question,
        RecipeSpace space,
        double[] steps,
        double water,
        bool proven,
        RecipeAim? aim
    )
    {
        var use = ImmutableArray.CreateBuilder<PlannedAmount>();
        var buy = ImmutableArray.CreateBuilder<PlannedAmount>();
        RecipeVariable? standing = null;
        for (var i = 0; i < steps.Length; i++)
        {
            var variable = space.Variables[i];
            if (question.Onto is not null && i == 0)
            {
                standing = variable;
            }
            else if (steps[i] > 1e-9)
            {
                (variable.Item.IsPurchase ? buy : use).Add(
                    new PlannedAmount(
                        variable.Item,
                        steps[i] * variable.Step,
                        variable.Typical * steps[i]
                    )
                );
            }
        }

        var mixture = MixtureOf(question, space, [.. use, .. buy], water, standing);
        var expect = Expectation.Of(mixture, question);
        return new RecipePlan
        {
            Use = use.ToImmutable(),
            Buy = buy.ToImmutable(),
            Water = water,
            Mixture = mixture,
            Chance = ChanceOf(question, mixture),
            Cost = buy.Sum(b => b.Amount * b.Item.Price),
            Expect = expect,
            ProvenBest = proven,
            Notes = Notes(question, space, mixture, expect, proven, aim),
        };
    }

    private static Mixture MixtureOf(
        RecipeQuestion question,
        RecipeSpace space,
        ImmutableArray<PlannedAmount> amounts,
        double water,
        RecipeVariable? standing
    ) =>
        Mixture.Of(
            new MixtureQuestion
            {
                Ingredients =
                [
                    .. amounts.Select(a =>
                        a.Item.Ingredient with
                        {
                            Amount = Spread.Exact(a.Amount),
                        }
                    ),
                ],
                Water = Spread.Exact(water),
                MixingVolumeFactor = RecipeSpace.FactorOf(question),
                PointCount = RecipeQuestion.Scenarios,
                Seed = question.Seed,
            },
            standing?.Typical ?? default,
            standing?.Cases ?? []
        );

    // A condition is judged as it was set. An aim is judged as it is meant: where wood counts, by the carbon within
    // reach; moisture by what the mixture is made of; air by what is left after settling.
    private static ChanceInBand ChanceOf(RecipeQuestion question, Mixture mixture)
    {
        var bands = question.Bands;
        var moisture = bands.Moisture is { IsCondition: false }
            ? Verdict.MoistureAim(mixture)
            : null;
        bool Ratio(MixtureState s) =>
            bands.CarbonNitrogen is null
            || (
                bands.CarbonNitrogen.IsCondition
                    ? bands.CarbonNitrogen.Holds(s.CarbonNitrogenRatio)
                    : Aims.CarbonNitrogenFine.Holds(s.CarbonNitrogenRatio)
                        || Aims.AvailableCarbonNitrogenFine.Holds(s.AvailableCarbonNitrogenRatio)
            );
        bool Wet(MixtureState s) =>
            moisture?.Holds(s.Moisture) ?? bands.Moisture?.Holds(s.Moisture) ?? true;
        bool Airy(MixtureState s) =>
            bands.Air is null
            || bands.Air.Holds(bands.Air.IsCondition ? s.FreeAirSpace : s.FreeAirSpaceSettled);
        return new ChanceInBand(
            bands.CarbonNitrogen is null ? null : mixture.Chance(Ratio),
            bands.Moisture is null ? null : mixture.Chance(Wet),
            bands.Air is null ? null : mixture.Chance(Airy),
            mixture.Chance(s => Ratio(s) && Wet(s) && Airy(s))
        );
    }

    /// <summary>Whether a heap that keeps no condition of the asker's is worth building all the same.</summary>
    private static bool IsSound(RecipePlan plan)
    {
        var state = plan.Mixture.Typical;
        return plan.Expect.Heats != Heats.No
            && state.Moisture <= 70
            && !(state.FreeAirSpaceSettled < 20)
            && state.AvailableCarbonNitrogenRatio <= 40
            && state.CarbonNitrogenRatio <= Aims.HighestRatioOfWood
            && state.CarbonNitrogenRatio >= 12;
    }

    private static bool DiffersInKind(RecipePlan a, RecipePlan b)
    {
        static HashSet<string> Kinds(RecipePlan p) =>
            [
                .. p
                    .Use.Concat(p.Buy)
                    .Select(x => x.Item.Ingredient.Key + (x.Item.IsPurchase ? "+" : "")),
            ];
        var volume = b.Mixture.Typical.Matter.LooseVolume / a.Mixture.Typical.Matter.LooseVolume;
        return !Kinds(a).SetEquals(Kinds(b)) || Math.Abs(Math.Log(volume)) > 0.25;
    }

    private static ImmutableArray<PlannedAmount> LeftOver(RecipeQuestion question, RecipePlan plan)
    {
        var left = ImmutableArray.CreateBuilder<PlannedAmount>();
        foreach (var item in question.Items.Where(i => !i.IsPurchase))
        {
            var used = plan.Use.Where(u => ReferenceEquals(u.Item, item)).Sum(u => u.Amount);
            var rest = item.Ingredient.Amount.Typical - used;
            if (rest > 1e-9)
            {
                var one = IngredientSample
                    .Draw(item.Ingredient, new Numerics.Sampling.QuasiRandomSet(1, 1))
                    .Typical;
                left.Add(new PlannedAmount(item, rest, one * rest));
            }
        }

        return left.ToImmutable();
    }
}
