using System.Text.Json.Nodes;
using Heapwright.App.Library;
using Heapwright.App.Texts;
using Heapwright.Core.Amounts;
using Heapwright.Core.Diagnosis;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Contract;

/// <summary>The amounts that go with a cause, as far as the heap is known: by the litre of what most people have.</summary>
internal sealed class DiagnoseAmounts
{
    private readonly DiagnoseQuestion question;
    private readonly Assumptions assumptions;
    private readonly Dictionary<string, Told> amounts = new(StringComparer.Ordinal);
    private readonly Dictionary<string, MendDemand> demands = new(StringComparer.Ordinal);
    private readonly Dictionary<string, MendGap> gaps = new(StringComparer.Ordinal);

    /// <summary>Works the amounts out.</summary>
    /// <param name="question">What was asked.</param>
    /// <param name="likely">The ids of the causes that are likely enough to be acted on.</param>
    /// <param name="assumptions">Takes what was assumed.</param>
    public DiagnoseAmounts(
        DiagnoseQuestion question,
        IReadOnlySet<string> likely,
        Assumptions assumptions
    )
    {
        this.question = question;
        this.assumptions = assumptions;
        Moisture(likely);
        Stuff("short_of_nitrogen", MendPurpose.BringNitrogen, likely);
        Stuff("excess_nitrogen", MendPurpose.BindNitrogen, likely);
        Stuff("exposed_food", MendPurpose.Cover, likely);
        Assumed();
    }

    /// <summary>What the heap wants where a cause is mended with stuff; null for other causes.</summary>
    /// <param name="cause">The id of the cause.</param>
    public MendDemand? Demand(string cause) => demands.GetValueOrDefault(cause);

    /// <summary>The amount of a cause in words, or null.</summary>
    /// <param name="cause">The id of the cause.</param>
    public string? Sentence(string cause)
    {
        if (!amounts.TryGetValue(cause, out var told))
        {
            return null;
        }

        // A range so wide is no amount: what to begin with is.
        const double Wide = 10;
        var isWide = told.Amounts[0].Litres is var first && first.High > Wide * first.Low;
        var culture = assumptions.Measures.Culture;
        var sentence = Words.Of(
            "signs." + told.Code,
            culture,
            [
                .. told.Amounts.Select(a =>
                    (object)Litres(isWide ? Spread.Exact(a.Litres.Low) : a.Litres)
                ),
            ]
        );
        return isWide ? Words.Of("signs.amount_begin", culture, sentence) : sentence;
    }

    /// <summary>Why the amount of a cause cannot be told, in words; null where it can or where none goes with it.</summary>
    /// <param name="cause">The id of the cause.</param>
    public string? Unknown(string cause) =>
        gaps.GetValueOrDefault(cause) switch
        {
            MendGap.Size => Say("amounts_no_size"),
            MendGap.Squeeze => Say("amounts_no_squeeze"),
            MendGap.Contents => Say("amounts_no_contents"),
            MendGap.NothingWanted when cause is "short_of_nitrogen" or "excess_nitrogen" => Say(
                "amounts_none_by_contents"
            ),
            _ => null,
        };

    /// <summary>The amount of a cause, or null.</summary>
    /// <param name="cause">The id of the cause.</param>
    public JsonObject? Json(string cause)
    {
        if (!amounts.TryGetValue(cause, out var told))
        {
            return null;
        }

        var json = new JsonObject();
        foreach (var (field, litres) in told.Amounts)
        {
            json[field] = Contract.Json.Of(litres);
        }

        return json;
    }

    private void Moisture(IReadOnlySet<string> likely)
    {
        var (volume, squeeze) = (question.Heap.VolumeM3, question.Heap.Squeeze);
        gaps["too_dry"] =
            volume is null ? MendGap.Size
            : squeeze is null ? MendGap.Squeeze
            : MendGap.None;
        if (volume is { } m3 && squeeze is not null && RepairAmount.Water(m3, squeeze) is { } water)
        {
            amounts["too_dry"] = new Told("amount_water", [("water_l", water.Litres)]);
        }

        Stuff("too_wet", MendPurpose.DryUp, likely);
    }

    private void Stuff(string cause, MendPurpose purpose, IReadOnlySet<string> likely)
    {
        if (!likely.Contains(cause) && purpose != MendPurpose.DryUp)
        {
            return;
        }

        var demand = MendDemand.Of(purpose, question.Heap, question.Seed);
        demands[cause] = demand;
        gaps[cause] = demand.Gap;
        if (demand.Gap != MendGap.None)
        {
            return;
        }

        Spread? Of(string material) => demand.UnitsOf(Litre(material));
        Told? told = purpose switch
        {
            MendPurpose.DryUp => Two(
                "amount_leaves",
                (
                    "dry_leaves_l",
                    RepairAmount
                        .DryLeaves(question.Heap.VolumeM3!.Value, question.Heap.Squeeze!)
                        ?.Litres
                ),
                ("shredded_card_l", Of("cardboard_shredded"))
            ),
            MendPurpose.BringNitrogen => Two(
                "amount_grass",
                ("fresh_grass_l", Of("grass_clippings_fresh")),
                ("coffee_grounds_l", Of("coffee_grounds"))
            ),
            MendPurpose.BindNitrogen => Two(
                "amount_leaves",
                ("dry_leaves_l", Of("leaves_mixed_dry")),
                ("shredded_card_l", Of("cardboard_shredded"))
            ),
            _ => Two("amount_cover", ("cover_l", Of("leaves_mixed_dry")), ("", null)),
        };
        if (told is not null)
        {
            amounts[cause] = told;
        }
    }

    private static Told? Two(
        string code,
        (string Field, Spread? Litres) one,
        (string Field, Spread? Litres) other
    ) =>
        one.Litres is not { } first ? null
        : other.Litres is { } second
            ? new Told(code + "_or", [(one.Field, first), (other.Field, second)])
        : new Told(code, [(one.Field, first)]);

    private static Ingredient Litre(string id)
    {
        var material = LibraryReader.Library.Find(id)!;
        return new Ingredient
        {
            Name = material.Name,
            Material = material,
            Properties = material.Properties,
            Amount = Spread.Exact(1),
            Unit = MeasureUnits.Find("l")!,
        };
    }

    private void Assumed()
    {
        if (amounts.Count == 0 || question.Heap.VolumeM3 is not { } volume)
        {
            return;
        }

        var measures = assumptions.Measures;
        if (question.IsSizedByWord)
        {
            assumptions.Say(
                "signs.amounts_by_size",
                measures.Heap(volume.Low),
                measures.Heap(volume.High)
            );
        }

        if (amounts.Keys.Any(k => k != "exposed_food"))
        {
            assumptions.Say("signs.amounts_assumed", measures.Heap(volume.Typical));
        }

        if (amounts.Keys.Any(k => k is "short_of_nitrogen" or "excess_nitrogen"))
        {
            assumptions.Say(
                "signs.amounts_by_ratio",
                MendDemand.RatioFromBelow,
                MendDemand.RatioFromAbove
            );
        }

        if (amounts.ContainsKey("exposed_food"))
        {
            assumptions.Say(
                "signs.amounts_of_cover",
                measures.Short(MendDemand.CoverDepth.Low),
                measures.Short(MendDemand.CoverDepth.High)
            );
        }
    }

    private string Say(string code) => Words.Of("signs." + code, assumptions.Measures.Culture);

    private string Litres(Spread litres) =>
        assumptions.Measures.Litres(Figures.TwoDigits(litres.Low), Figures.TwoDigits(litres.High));

    private sealed record Told(string Code, (string Field, Spread Litres)[] Amounts);
}
