using System.Collections.Immutable;
using Heapwright.Core.Forecasts;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;
using Heapwright.Core.Simulation;

namespace Heapwright.Core.Advice;

/// <summary>What is worth trying on a heap as it stands: never more than one change, unless they belong together.</summary>
internal static class Candidates
{
    private const double Thoroughness = 0.8;
    private const int TurnDays = 4; // today and so many days after
    private const double DampEnough = 57; // % of wet mass: what is poured is meant to bring it there
    private const double Dry = 52;
    private const double Wet = 62;
    private const double MostAdded = 0.25; // of the dry matter that is there
    private const double Cold = 8; // °C air
    private const double Week = 7; // d
    private const double NotHot = 45; // °C
    private const double LongEnough = 3; // d: a good heap is warm by then

    // Minutes: common practice, no source.
    private const double TurnPerCubicMetre = 40;
    private const double TurnAtLeast = 10;
    private const double PerTenLitres = 1.5;
    private const double FetchStuff = 10;
    private const double CoverMinutes = 5;

    /// <summary>The candidates, waiting first.</summary>
    /// <param name="forecast">The heap.</param>
    /// <param name="stock">What could be added.</param>
    public static ImmutableArray<HeapAction> Of(
        ForecastAnswer forecast,
        IReadOnlyList<StockStuff> stock
    )
    {
        var now = forecast.Question.FromDay;
        var state = State.Of(forecast);
        var actions = ImmutableArray.CreateBuilder<HeapAction>();
        actions.Add(
            new HeapAction
            {
                Deed = ActionKind.Wait,
                OnDay = now,
                NothingAddedUntil = now,
            }
        );
        var turning = Math.Max(TurnAtLeast, TurnPerCubicMetre * state.Volume);
        for (var d = 0; d <= TurnDays; d++)
        {
            actions.Add(Turn(now, now + d, turning, 0));
        }

        if (state.Moisture < Dry)
        {
            var litres = Litres(state, DampEnough);
            actions.Add(Turn(now, now, turning, litres));
            actions.Add(Turn(now, now + 2, turning, litres));
            foreach (var share in (double[])[1, 0.5])
            {
                actions.Add(
                    new HeapAction
                    {
                        Deed = ActionKind.Water,
                        OnDay = now,
                        Litres = share * litres,
                        Minutes = Pouring(share * litres),
                        Events = [new Watered(now, share * litres)],
                        NothingAddedUntil = now,
                    }
                );
            }
        }

        AddStuff(actions, state, stock, now, turning);
        Covers(actions, forecast, now);
        FeedLess(actions, forecast, now);
        return actions.ToImmutable();
    }

    private static HeapAction Turn(double now, double day, double minutes, double litres) =>
        new()
        {
            Deed = ActionKind.Turn,
            OnDay = day,
            Litres = litres,
            Minutes = minutes + Pouring(litres),
            Events =
                litres > 0
                    ? [new Watered(day, litres), new Turned(day, Thoroughness, TurnedPart.All)]
                    : [new Turned(day, Thoroughness, TurnedPart.All)],
            NothingAddedUntil = now,
        };

    // Browns where it is wet, greens where it does not heat.
    private static void AddStuff(
        ImmutableArray<HeapAction>.Builder actions,
        State state,
        IReadOnlyList<StockStuff> stock,
        double now,
        double turning
    )
    {
        foreach (var stuff in stock)
        {
            var dry = Solids(stuff.Ingredient);
            if (!(dry > 0) || (stuff.IsGreen ? !state.WantsGreens : !state.WantsBrowns))
            {
                continue;
            }

            var share = Math.Min(1, MostAdded * state.Dry / dry);
            var portion = stuff.Ingredient with
            {
                Amount = Spread.Exact(share * stuff.Ingredient.Amount.Typical),
            };
            actions.Add(
                new HeapAction
                {
                    Deed = stuff.IsGreen ? ActionKind.AddGreens : ActionKind.AddBrowns,
                    OnDay = now,
                    Stuff = portion,
                    Minutes = turning + FetchStuff,
                    Events =
                    [
                        new Added(now, [portion]),
                        new Turned(now, Thoroughness, TurnedPart.All),
                    ],
                    NothingAddedUntil = now,
                }
            );
        }
    }

    private static void Covers(
        ImmutableArray<HeapAction>.Builder actions,
        ForecastAnswer forecast,
        double now
    )
    {
        var heap = forecast.Question.Heap;
        var cover =
            heap.Events.OfType<Covered>().Where(e => e.Day <= now).MaxBy(e => e.Day)?.Cover
            ?? heap.Cover;
        var weather = heap.Weather.At(now);
        var kind =
            cover == Surroundings.Covers["none"] && weather.Rain > 0 ? "lid"
            : cover != Surroundings.Covers["straw"] && heap.Weather.MeanAir < Cold ? "straw"
            : null;
        if (kind is not null)
        {
            actions.Add(
                new HeapAction
                {
                    Deed = ActionKind.Cover,
                    OnDay = now,
                    Cover = kind,
                    Minutes = CoverMinutes,
                    Events = [new Covered(now, Surroundings.Covers[kind])],
                    NothingAddedUntil = now,
                }
            );
        }
    }

    private static void FeedLess(
        ImmutableArray<HeapAction>.Builder actions,
        ForecastAnswer forecast,
        double now
    )
    {
        var feeds = forecast.Question.Heap.Events.OfType<Added>().Where(e => e.Day > now).ToArray();
        if (feeds.Length == 0)
        {
            return;
        }

        actions.Add(
            new HeapAction
            {
                Deed = ActionKind.Close,
                OnDay = now,
                NothingAddedUntil = double.PositiveInfinity,
            }
        );
        if (feeds.Any(e => e.Day <= now + Week) && feeds.Any(e => e.Day > now + Week))
        {
            actions.Add(
                new HeapAction
                {
                    Deed = ActionKind.StopAdding,
                    OnDay = now,
                    NothingAddedUntil = now + Week,
                }
            );
        }
    }

    private static double Litres(State state, double moisture)
    {
        var wanted = state.Dry * moisture / (100 - moisture);
        var litres = wanted - state.Water;
        var step = litres > 40 ? 10 : 5; // as cans are filled
        return Math.Max(step, Math.Round(litres / step) * step);
    }

    private static double Pouring(double litres) => PerTenLitres * litres / 10;

    private static double Solids(Ingredient ingredient) =>
        Mixture.Of(new MixtureQuestion { Ingredients = [ingredient] }).Typical.Matter.DryMass;

    /// <summary>The heap in the middle of its members, as it stands.</summary>
    private readonly record struct State(
        double Moisture,
        double Dry,
        double Water,
        double Volume,
        bool WantsBrowns,
        bool WantsGreens
    )
    {
        public static State Of(ForecastAnswer forecast)
        {
            var now = forecast.Runs.Fit.Now;
            var n = now.Question.Members;
            double Median(Func<HeapLook, int, double> of)
            {
                var values = new double[n];
                for (var i = 0; i < n; i++)
                {
                    var (b, lane) = Math.DivRem(i, HeapBlock.Lanes);
                    values[i] = of(now.Blocks[b].Looks[^1], lane);
                }

                Array.Sort(values);
                return values[n / 2];
            }

            var dry = Median((look, lane) => look.DryOf(lane));
            var water = Median((look, lane) => look.Water[lane]);
            var moisture = 100 * water / (water + dry);
            var core = forecast.Core[0].Order().ElementAt(forecast.Core[0].Length / 2);
            return new State(
                moisture,
                dry,
                water,
                Median((look, lane) => look.Volume[lane]),
                WantsBrowns: moisture > Wet,
                WantsGreens: core < NotHot && forecast.Question.FromDay >= LongEnough
            );
        }
    }
}
