using System.Collections.Immutable;
using Heapwright.App.Library;
using Heapwright.App.Sites;
using Heapwright.App.Texts;
using Heapwright.Core.Amounts;
using Heapwright.Core.Diagnosis;
using Heapwright.Core.Materials;
using Heapwright.Core.Materials.Stock;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Contract;

/// <summary>What of the stock mends a heap, in the measures in which it was counted: never more than there is.</summary>
internal sealed class StockAmounts
{
    private const int MostChoices = 3;

    // What is about handling alone stands among the cautions of the whole answer, not beside the amount.
    private static readonly HashSet<string> Handling = new(StringComparer.Ordinal)
    {
        "attracts_animals",
        "chipper_safety",
        "dust_mould",
        "inks_coatings",
        "legionella_dust",
        "raises_ph",
        "self_heating_store",
        "skin_sap",
    };

    private readonly MendDemand demand;
    private readonly Measures measures;
    private readonly List<(StuffToAdd Stuff, MendPart Part)> parts = [];
    private readonly List<string> lines = [];
    private readonly List<string> heldBack = [];

    /// <summary>Chooses from the stock.</summary>
    /// <param name="demand">What the heap wants; nothing unknown about it.</param>
    /// <param name="stock">What is at hand.</param>
    /// <param name="measures">How quantities are told.</param>
    public StockAmounts(MendDemand demand, IReadOnlyList<StuffToAdd> stock, Measures measures)
    {
        this.demand = demand;
        this.measures = measures;
        foreach (var stuff in stock.Where(s => Suits(s.Material)))
        {
            Weigh(stuff);
        }

        // What is enough comes first, then what carries no caution, then what takes the least of what is there.
        var chosen = parts
            .OrderByDescending(p => p.Part.IsEnough)
            .ThenBy(p => Serious(p.Stuff.Material).Any())
            .ThenByDescending(p => p.Part.There / p.Part.Needed.Typical)
            .ToList();
        chosen = chosen.Exists(p => p.Part.IsEnough)
            ? [.. chosen.Where(p => p.Part.IsEnough).Take(MostChoices)]
            : chosen;
        Proposed = [.. chosen.Select(p => p.Stuff.Material)];
        Tell(chosen);
        foreach (var (stuff, _) in chosen)
        {
            Warn(stuff);
        }

        lines.AddRange(heldBack);
    }

    /// <summary>What to take, what is wanting, what to mind, and what is held back and why.</summary>
    public IReadOnlyList<string> Lines => lines;

    /// <summary>The materials that are proposed.</summary>
    public ImmutableArray<Material> Proposed { get; }

    private bool Suits(Material material) =>
        demand.Purpose switch
        {
            MendPurpose.BringNitrogen => material.CountsAs == "green",
            MendPurpose.DryUp => material.CountsAs is "brown" or "structure",
            // Coarse wood binds hardly any nitrogen while it lies there.
            MendPurpose.BindNitrogen => material.CountsAs == "brown" && material.Group != "woody",
            _ => material.CountsAs == "brown",
        };

    private void Weigh(StuffToAdd stuff)
    {
        var name = stuff.Now.Name;
        var admission = MayItGoIn.Judge(stuff.Material, getsHot: false);
        if (admission.Advice is AdmissionAdvice.Never or AdmissionAdvice.NotAdvised)
        {
            heldBack.Add(measures.Say(admission.Reasons[0]));
            return;
        }

        if (stuff.IsSpoiled && stuff.Material.SpoilsHow is "ferments" or "loses_nitrogen")
        {
            heldBack.Add(Say("stock_spoiled", name, measures.Say(stuff.AtHand.Age.Reasons[0])));
            return;
        }

        var asIs = IsIfDry(stuff) ? stuff.AsItCame : stuff.Now;
        if (demand.UnitsOf(asIs) is { } needed)
        {
            parts.Add((stuff, new MendPart(asIs, needed)));
        }
        else
        {
            heldBack.Add(
                Say(
                    !MendDemand.IsKnown(asIs) ? "stock_not_known"
                        : demand.Purpose == MendPurpose.DryUp ? "stock_too_wet"
                        : "stock_useless",
                    name
                )
            );
        }
    }

    // Nobody notes how browns are kept: what takes up water is reckoned dry, and the answer says on which condition.
    private bool IsIfDry(StuffToAdd stuff) =>
        demand.Purpose == MendPurpose.DryUp
        && stuff.Days > 0
        && stuff.Material.SpoilsHow == "gets_wet";

    private void Tell(List<(StuffToAdd Stuff, MendPart Part)> chosen)
    {
        if (chosen.Count == 0)
        {
            lines.Add(Say("stock_none"));
            return;
        }

        if (chosen[0].Part.IsEnough)
        {
            lines.Add(Say("stock_take", Choices(chosen, p => Taken(p.Part.Take, p.Part))));
            foreach (var (_, part) in chosen.Where(p => p.Part.MayBeWanting > 0))
            {
                lines.Add(
                    Say(
                        "stock_may_want",
                        part.Stuff.Name,
                        Rounded(part.MayBeWanting, part, double.MaxValue)
                    )
                );
            }

            return;
        }

        lines.Add(Say("stock_wants", Choices(chosen, p => Taken(p.Part.Needed, p.Part))));
        foreach (var (_, part) in chosen)
        {
            lines.Add(
                Say(
                    "stock_short",
                    part.Stuff.Name,
                    Exactly(part.There, part.Stuff.Unit),
                    Rounded(part.Wanting, part, double.MaxValue)
                )
            );
        }

        if (chosen.Count > 1)
        {
            var share = MendPart.Together(chosen.Select(p => p.Part));
            lines.Add(
                share >= 1 ? Say("stock_together") : Say("stock_together_part", Percent(share))
            );
        }
    }

    private string Choices(
        List<(StuffToAdd Stuff, MendPart Part)> chosen,
        Func<(StuffToAdd Stuff, MendPart Part), string> amount
    ) =>
        string.Join(
            Say("stock_or"),
            chosen.Select(p => Say("stock_of", amount(p), p.Part.Stuff.Name))
        );

    private void Warn(StuffToAdd stuff)
    {
        var name = stuff.Now.Name;
        if (IsIfDry(stuff))
        {
            lines.Add(Say("stock_if_dry", name, stuff.Days));
        }

        var admission = MayItGoIn.Judge(stuff.Material, getsHot: false);
        foreach (var reason in admission.Reasons.Where(r => r.Code == "materials.needs_heat"))
        {
            lines.Add(measures.Say(reason));
        }

        foreach (var code in Serious(stuff.Material))
        {
            if (Words.TryOf($"cautions.{code}.text") is { } text)
            {
                lines.Add(Say("stock_caution", name, text));
            }
        }
    }

    private static IEnumerable<string> Serious(Material material) =>
        material.Cautions.Where(c => !Handling.Contains(c));

    private string Taken(Spread units, MendPart part)
    {
        var most = part.IsEnough ? part.There : double.MaxValue;
        var typical = Rounded(units.Typical, part, most);
        var (low, high) = (Number(units.Low, part, most), Number(units.High, part, most));
        return low == high ? typical : Say("stock_range", typical, low, high);
    }

    private string Rounded(double amount, MendPart part, double most) =>
        UnitWords.Amount(Step(amount, part.Stuff.Unit, most), part.Stuff.Unit, measures.Culture);

    private string Number(double amount, MendPart part, double most) =>
        UnitWords.Number(Step(amount, part.Stuff.Unit, most), part.Stuff.Unit, measures.Culture);

    private string Exactly(double amount, UnitSize unit) =>
        UnitWords.Amount(amount, unit, measures.Culture);

    // Containers by the quarter, by the half from three on and whole from ten on; else two digits. What there is, is the most.
    private static double Step(double amount, UnitSize unit, double most)
    {
        if (!unit.WholeByDefault)
        {
            return Math.Min(Figures.TwoDigits(amount), most);
        }

        var step =
            amount < 3 ? 0.25
            : amount < 10 ? 0.5
            : 1;
        return Math.Min(Math.Max(step, Math.Round(amount / step) * step), most);
    }

    private static double Percent(double share) => Math.Floor(share * 100);

    private string Say(string code, params object[] values) =>
        Words.Of("signs." + code, measures.Culture, values);
}
