using System.Collections.Immutable;
using Heapwright.Core.Bins;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;
using Heapwright.Core.Reasons;
using UnitsNet;

namespace Heapwright.Core.BuildPlans;

/// <summary>Turns amounts, water and a bin into a build plan.</summary>
internal static class BuildPlanner
{
    /// <summary>How much more than fits loosely can be trodden in, layer by layer; an estimate.</summary>
    public const double MostTrodden = 1.2;

    /// <summary>Height left after two and a half weeks, and by a first hot turn (practitioners' records, printed).</summary>
    public const double SettledShare = 0.75;

    public static BuildPlan Plan(BuildQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        var stuffs = StuffsOf(question);
        var loose = stuffs.Sum(s => s.Litres);
        var factor = Mixture.FactorOf(MixtureOf(question)).Typical;
        var bin = question.Bin ?? BinFor(loose * factor);
        var over = loose * factor / (bin.Volume.Liters);
        if (question.Bin is not null && HasWalls(bin) && over > MostTrodden)
        {
            return Fitted(question, stuffs, MostTrodden / over);
        }

        return Plan(question, stuffs, bin, factor);
    }

    private static BuildPlan Plan(
        BuildQuestion question,
        IReadOnlyList<Stuff> stuffs,
        Bin bin,
        double factor
    )
    {
        var loose = stuffs.Sum(s => s.Litres);
        var natural = new Heaping(bin, loose, factor);
        var pressed = HasWalls(bin) ? Math.Min(1, bin.Height / natural.Height) : 1;
        var heaping = natural with { Factor = factor * pressed };
        var arrangement = Ordering.Find(heaping, stuffs);

        var unwatered = MixtureOf(question);
        var dry = Mixture.Of(unwatered);
        var target = WaterShares.Target(dry);
        var water = question.Water?.Liters ?? WaterShares.Usual(stuffs, dry, target);
        var mixture = Mixture.Of(unwatered with { Water = Spread.Exact(water) });
        var facts = new PlanFacts(
            question,
            stuffs,
            heaping,
            pressed,
            arrangement,
            mixture,
            water,
            target
        );

        var layers = LayerWriter.Write(facts);
        var outline = heaping.Outline(Heaping.CoverOf(arrangement.Drafts));
        var (one, two) = BuildTime.Of(mixture, stuffs);
        var slumped = Math.Min(1, mixture.Typical.SettledVolume / mixture.Typical.FilledVolume);
        var margin = ScrapsPlace.MarginOf(facts, layers);
        return new BuildPlan
        {
            Question = question with { Water = Volume.FromLiters(water), Bin = bin },
            Mixture = mixture,
            Bin = bin,
            Outline = outline,
            Layers = layers,
            BuiltFactor = heaping.Factor,
            Water = Volume.FromLiters(water),
            ScrapsMargin = margin,
            TwoDayHeight = outline.Height * slumped,
            SettledHeight = outline.Height * Math.Min(SettledShare, slumped),
            OnePerson = one,
            TwoPeople = two,
            Tools = BuildAdvice.Tools(stuffs, water),
            Place = BuildAdvice.Place(stuffs),
            Notes = BuildNotes.Of(facts, layers, margin),
            Assumptions = BuildNotes.Assumptions(facts),
        };
    }

    /// <summary>The plan for what the bin holds, with the rest of every stuff left over.</summary>
    private static BuildPlan Fitted(
        BuildQuestion question,
        IReadOnlyList<Stuff> stuffs,
        double share
    )
    {
        var amounts = stuffs.Select(s => Kept(s, share)).ToArray();

        // Where the bin is smaller than a quarter of every container, nothing can be set apart by eye.
        if (amounts.All(a => a <= 0))
        {
            amounts = [.. stuffs.Select(s => s.Amount * share)];
        }

        var kept = stuffs
            .Select((s, i) => s.Ingredient with { Amount = Spread.Exact(amounts[i]) })
            .ToImmutableArray();
        var plan = Plan(question with { Ingredients = kept, Water = question.Water * share });
        var leftOver = ImmutableArray.CreateBuilder<LayerPart>();
        for (var i = 0; i < amounts.Length; i++)
        {
            // What is kept may still be too much, if it mixes less tightly than before.
            var rest =
                stuffs[i].Amount
                - amounts[i]
                + plan.LeftOver.Where(p => ReferenceEquals(p.Ingredient, kept[i]))
                    .Sum(p => p.Amount);
            if (rest > 0)
            {
                leftOver.Add(LayerWriter.Part(stuffs[i], rest, inMiddle: false));
            }
        }

        var litres = leftOver.Sum(p => p.Loose.Liters);
        return plan with
        {
            LeftOver = leftOver.ToImmutable(),
            Notes =
            [
                Reason.Of("buildplans.left_over", Volume.FromLiters(litres)),
                .. plan.Notes.Where(n => n.Code != "buildplans.left_over"),
            ],
        };
    }

    private static double Kept(Stuff stuff, double share)
    {
        var step = Portions.FineStep(stuff, stuff.Amount * share, double.PositiveInfinity);
        var steps = Math.Floor((decimal)(stuff.Amount * share) / step);
        return Math.Min(stuff.Amount, (double)(step * steps));
    }

    private static MixtureQuestion MixtureOf(BuildQuestion question) =>
        new()
        {
            Ingredients = question.Ingredients,
            MixingVolumeFactor = question.MixingVolumeFactor,
            Seed = question.Seed,
        };

    private static List<Stuff> StuffsOf(BuildQuestion question)
    {
        var points = new Numerics.Sampling.QuasiRandomSet(1, question.Seed);
        var stuffs = new List<Stuff>();
        foreach (var ingredient in question.Ingredients.Where(i => i.Amount.Typical > 0))
        {
            var stuff = new Stuff(ingredient, IngredientSample.Draw(ingredient, points).Typical);
            if (!(stuff.Litres > 0))
            {
                throw new ArgumentException(
                    ingredient.Name + ": the density must be known",
                    nameof(question)
                );
            }

            stuffs.Add(stuff);
        }

        return stuffs.Count > 0
            ? stuffs
            : throw new ArgumentException(
                "at least one ingredient must have an amount above 0",
                nameof(question)
            );
    }

    // As high as wide up to 1.2 m, which a fork still reaches over; wider beyond.
    private static Bin BinFor(double litres)
    {
        var cubic = litres / 1000;
        var height = Math.Clamp(Math.Cbrt(cubic), 0.1, 1.2);
        var side = Length.FromMeters(Math.Clamp(Math.Sqrt(cubic / height), 0.1, 100));
        return Bin.Box(side, side, Length.FromMeters(height));
    }

    private static bool HasWalls(Bin bin) => bin.Shape is BinShape.Box or BinShape.Ring;
}
