using System.Collections.Immutable;
using Heapwright.Core.Bins;
using Heapwright.Core.Simulation;

namespace Heapwright.App.Contract;

/// <summary>Reads what is done to a heap: turns, water, additions, covers, moves, splits.</summary>
internal sealed class SimulateEvents(IngredientReader reader, Assumptions assumptions)
{
    private static readonly Dictionary<string, double> Thoroughness = new(StringComparer.Ordinal)
    {
        ["poor"] = 0.6,
        ["fair"] = 0.8,
        ["good"] = 0.95,
    };

    private static readonly Dictionary<string, string[]> FieldsOf = new(StringComparer.Ordinal)
    {
        ["turn"] = ["thoroughness", "part"],
        ["water"] = ["l"],
        ["add"] = ["ingredients"],
        ["cover"] = ["kind"],
        ["move"] = ["thoroughness", "bin", "walls"],
        ["split"] = ["share_pct"],
    };

    private static readonly string[] Fields = [.. FieldsOf.Values.SelectMany(f => f).Distinct()];

    /// <summary>The events, in order of time.</summary>
    /// <param name="input">The field <c>events</c>, or null.</param>
    /// <param name="days">How long the heap is followed.</param>
    /// <exception cref="InputProblem">Something is wrong in it.</exception>
    public ImmutableArray<HeapEvent> Read(Input? input, double days)
    {
        if (input is null)
        {
            return [];
        }

        ImmutableArray<HeapEvent> events =
        [
            .. input.Items(0, SimulateLimits.MostEvents).Select(One).OrderBy(e => e.Day),
        ];
        foreach (var late in events.Where(e => e.Day > days))
        {
            assumptions.Say("simulate.event_late", Word(late), late.Day, days);
        }

        return events;
    }

    /// <summary>The word for an event, as in questions.</summary>
    /// <param name="happening">The event.</param>
    public static string Word(HeapEvent happening) =>
        happening switch
        {
            Moved => "move",
            Turned => "turn",
            Watered => "water",
            Added => "add",
            Split => "split",
            _ => "cover",
        };

    private HeapEvent One(Input input)
    {
        var fields = input.Fields(["day", "do", .. Fields]);
        var day = fields.Needed("day").Number(0, 3650);
        var deed = fields.Needed("do").Choice([.. FieldsOf.Keys]);
        fields.OnlyOf(deed, FieldsOf[deed], Fields);
        return deed switch
        {
            "turn" => Turn(fields, day),
            "water" => new Watered(day, fields.Needed("l").Number(0, 100_000)),
            "add" => Add(fields, day),
            "move" => Move(fields, day),
            "split" => new Split(day, fields.Needed("share_pct").Number(0.1, 99.9) / 100),
            _ => Cover(fields, day),
        };
    }

    private Turned Turn(InputFields fields, double day) =>
        new(
            day,
            How(fields, "fair", "simulate.thoroughness_assumed"),
            fields["part"]?.Choice("all", "top_half", "outside_in") switch
            {
                "top_half" => TurnedPart.TopHalf,
                "outside_in" => TurnedPart.OutsideIn,
                _ => TurnedPart.All,
            }
        );

    // Every forkful is taken up and laid down, so that it is turned well unless told otherwise.
    private Moved Move(InputFields fields, double day)
    {
        var there = fields["bin"] is { } bin ? BinReader.Read(bin) : null;
        if (there?.Shape is BinShape.Cone or BinShape.Windrow)
        {
            assumptions.Say("simulate.moved_free", day);
        }

        return new Moved(
            day,
            How(fields, "good", "simulate.move_assumed"),
            there,
            fields["walls"]?.Choice([.. Surroundings.Walls.Keys]) is { } walls
                ? Surroundings.Walls[walls]
                : null
        );
    }

    private double How(InputFields fields, string usual, string assumed)
    {
        var how = fields["thoroughness"]?.Choice([.. Thoroughness.Keys]);
        if (how is null)
        {
            assumptions.Say(assumed, 100 * Thoroughness[usual]);
        }

        return Thoroughness[how ?? usual];
    }

    private Added Add(InputFields fields, double day)
    {
        var list = fields.Needed("ingredients");
        var ingredients = SimulateReader.ReadIngredients(list, reader);
        return ingredients.Any(i => i.Amount.Typical > 0)
            ? new Added(day, ingredients)
            : throw list.Problem("every amount is 0; at least one above 0 is needed");
    }

    private Covered Cover(InputFields fields, double day)
    {
        var kind = fields["kind"]?.Choice([.. Surroundings.Covers.Keys]);
        if (kind is null)
        {
            assumptions.Say("simulate.kind_assumed");
        }

        return new Covered(day, Surroundings.Covers[kind ?? "breathable"]);
    }
}
