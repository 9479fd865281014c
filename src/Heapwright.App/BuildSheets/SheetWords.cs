using Heapwright.App.Library;
using Heapwright.App.Texts;
using Heapwright.Core.Bins;
using Heapwright.Core.BuildPlans;

namespace Heapwright.App.BuildSheets;

/// <summary>The sentences of a build sheet, the same on screen, on paper and in an answer.</summary>
public static class SheetWords
{
    // In the order in which the work is done.
    private static readonly string[] PrepareOrder =
    [
        "remove_tape_and_plastic",
        "shake_out_soil",
        "rinse_salt",
        "wilt_first",
        "chop_short",
        "shred",
        "tear",
        "crush",
        "break_up",
        "fluff",
        "soak_first",
        "scatter_thinly",
    ];

    /// <summary>How to prepare a layer and what to do when it is laid: sentences in a row; may be empty.</summary>
    /// <param name="layer">The layer.</param>
    public static string Prepare(BuildLayer layer)
    {
        ArgumentNullException.ThrowIfNull(layer);
        return string.Join(' ', layer.Prepare.Select(PrepareOne).OfType<string>());
    }

    /// <summary>What is to be done before building begins: one line for each kind of work, with the stuff it is for.</summary>
    /// <param name="plan">The plan.</param>
    public static IReadOnlyList<string> PrepareFirst(BuildPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var work = plan
            .Layers.SelectMany(l => l.Parts.Select(p => (p.Ingredient, l.Prepare)))
            .SelectMany(p =>
                (p.Ingredient.Material?.Prepare ?? [])
                    .Where(c => p.Prepare.Contains(c, StringComparer.Ordinal))
                    .Select(c => (Code: c, Name: ShortName(p.Ingredient.Name, plan)))
            )
            .Distinct()
            .ToLookup(w => w.Code, w => w.Name, StringComparer.Ordinal);
        return
        [
            .. PrepareOrder
                .Where(work.Contains)
                .Select(code =>
                    Words.Of(
                        "buildplans.prepared",
                        null,
                        PrepareOne(code)!.TrimEnd('.'),
                        string.Join("; ", work[code])
                    )
                ),
        ];
    }

    /// <summary>What to do when the layer is laid; empty for nothing but watering.</summary>
    /// <param name="layer">The layer.</param>
    public static string Then(BuildLayer layer)
    {
        ArgumentNullException.ThrowIfNull(layer);
        if (layer.Role == LayerRole.Kitchen)
        {
            return Words.Of("buildplans.cover_scraps");
        }

        if (layer.Role == LayerRole.Pair)
        {
            return Words.Of("buildplans.fork_at_once");
        }

        return layer.ForkWith is { } below ? Words.Of("buildplans.fork_with", null, below) : "";
    }

    /// <summary>One part of a layer: amount and name.</summary>
    /// <param name="part">The part.</param>
    /// <param name="measures">The number format.</param>
    public static string Part(LayerPart part, Measures measures)
    {
        ArgumentNullException.ThrowIfNull(part);
        ArgumentNullException.ThrowIfNull(measures);
        return UnitWords.Amount(part.Amount, part.Ingredient.Unit, measures.Culture)
            + " "
            + Name(part);
    }

    /// <summary>One part of a layer as it is written into a picture: amount and the name without its finer points.</summary>
    /// <param name="part">The part.</param>
    /// <param name="plan">The plan; where two of its stuffs would have the same short name, it is written in full.</param>
    /// <param name="measures">The number format.</param>
    public static string ShortPart(LayerPart part, BuildPlan plan, Measures measures)
    {
        ArgumentNullException.ThrowIfNull(part);
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(measures);
        return UnitWords.Amount(part.Amount, part.Ingredient.Unit, measures.Culture)
            + " · "
            + ShortName(part.Ingredient.Name, plan);
    }

    private static string ShortName(string name, BuildPlan plan)
    {
        var brief = Brief(name);
        var alone = plan
            .Layers.SelectMany(l => l.Parts)
            .Select(p => p.Ingredient.Name)
            .Distinct(StringComparer.Ordinal)
            .Count(n => Brief(n) == brief);
        return alone == 1 ? brief : name;
    }

    private static string Brief(string name) => name.Split(',')[0];

    /// <summary>The name of what goes in, with where in the layer it goes if that matters.</summary>
    /// <param name="part">The part.</param>
    public static string Name(LayerPart part)
    {
        ArgumentNullException.ThrowIfNull(part);
        return part.InMiddle
            ? Words.Of("buildplans.in_the_middle", null, part.Ingredient.Name)
            : part.Ingredient.Name;
    }

    /// <summary>The bin in words.</summary>
    /// <param name="bin">The bin.</param>
    /// <param name="measures">The measures.</param>
    public static string Bin(Bin bin, Measures measures)
    {
        ArgumentNullException.ThrowIfNull(bin);
        ArgumentNullException.ThrowIfNull(measures);
        var (length, width, height) = (
            measures.Long(bin.Length),
            measures.Long(bin.Width),
            measures.Long(bin.Height)
        );
        return bin.Shape switch
        {
            BinShape.Box => Words.Of("buildplans.bin_box", null, length, width, height),
            BinShape.Windrow => Words.Of("buildplans.bin_windrow", null, length, width, height),
            BinShape.Ring => Words.Of("buildplans.bin_ring", null, width, height),
            _ => Words.Of("buildplans.bin_cone", null, width, height),
        };
    }

    /// <summary>Heights, volume and water of the heap, in a sentence or two.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="measures">The measures.</param>
    public static string Facts(BuildPlan plan, Measures measures)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(measures);
        return Words.Of(
            "buildplans.facts",
            null,
            measures.Short(plan.Height),
            measures.Short(plan.SettledHeight),
            measures.Heap(plan.Outline.Volume),
            measures.Volume(plan.Water)
        );
    }

    /// <summary>The number of layers and the time, in a sentence or two.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="measures">The number format.</param>
    public static string Subtitle(BuildPlan plan, Measures measures)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(measures);
        return Words.Of(
            "buildplans.subtitle",
            measures.Culture,
            plan.Layers.Length,
            Time(plan.OnePerson),
            Time(plan.TwoPeople)
        );
    }

    /// <summary>The water of a layer; the words for none where there is none.</summary>
    /// <param name="layer">The layer.</param>
    /// <param name="measures">The measures.</param>
    public static string Water(BuildLayer layer, Measures measures)
    {
        ArgumentNullException.ThrowIfNull(layer);
        ArgumentNullException.ThrowIfNull(measures);
        return measures.Water(layer.Water.Liters) is { Length: > 0 } water
            ? water
            : Words.Of("buildplans.no_water");
    }

    /// <summary>Whether so much water goes on a layer that it can be poured.</summary>
    /// <param name="layer">The layer.</param>
    /// <param name="measures">The measures.</param>
    public static bool HasWater(BuildLayer layer, Measures measures)
    {
        ArgumentNullException.ThrowIfNull(layer);
        ArgumentNullException.ThrowIfNull(measures);
        return measures.Water(layer.Water.Liters).Length > 0;
    }

    private static string Time(TimeSpan time) =>
        time.TotalMinutes <= 180
            ? Words.Of("buildplans.minutes", null, time.TotalMinutes)
            : Words.Of("buildplans.hours", null, time.TotalHours);

    /// <summary>A tool in words.</summary>
    /// <param name="code">Its code.</param>
    public static string Tool(string code) => Words.Of("buildplans.tool_" + code);

    /// <summary>A piece of advice on the place in words.</summary>
    /// <param name="code">Its code.</param>
    public static string Place(string code) => Words.Of("buildplans.place_" + code);

    private static string? PrepareOne(string code) => Words.TryOf($"prepare.{code}_brief");
}
