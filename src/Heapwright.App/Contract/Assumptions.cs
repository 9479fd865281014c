using System.Text.Json.Nodes;
using Heapwright.App.Library;
using Heapwright.App.Texts;
using Heapwright.Core.Amounts;
using Heapwright.Core.Reasons;

namespace Heapwright.App.Contract;

/// <summary>What was assumed on the way to an answer, each thing said once.</summary>
/// <param name="measures">The measures of the sentences.</param>
internal sealed class Assumptions(Measures measures)
{
    private readonly List<string> said = [];

    /// <summary>The measures of the sentences.</summary>
    public Measures Measures => measures;

    /// <summary>All assumptions, in the order in which they were made.</summary>
    public IReadOnlyList<string> All => said;

    /// <summary>Says an assumption.</summary>
    /// <param name="code">The code of its sentence.</param>
    /// <param name="values">The values in it.</param>
    public void Say(string code, params object[] values) => Say(Reason.Of(code, values));

    /// <summary>Says an assumption.</summary>
    /// <param name="reason">The assumption.</param>
    public void Say(Reason reason) => Add(measures.Say(reason));

    /// <summary>Adds an assumption that is put into words already.</summary>
    /// <param name="sentence">The sentence.</param>
    public void Add(string sentence)
    {
        if (!said.Contains(sentence, StringComparer.Ordinal))
        {
            said.Add(sentence);
        }
    }

    /// <summary>Says the size of a container.</summary>
    /// <param name="unit">The container; units of mass and volume are not said.</param>
    public void Size(UnitSize unit)
    {
        if (!unit.WholeByDefault)
        {
            return;
        }

        var (low, high) = (unit.Size.Low, unit.Size.High);
        if (unit.Size.IsExact)
        {
            Say(
                "mixtures.container_exact",
                UnitWords.One(unit),
                unit.IsMass ? measures.KilogramsAsGiven(low) : measures.LitresAsGiven(low)
            );
        }
        else
        {
            Say(
                unit.IsAssumed ? "mixtures.container_assumed" : "mixtures.container_range",
                UnitWords.One(unit),
                unit.IsMass ? measures.Kilograms(low, high) : measures.Litres(low, high)
            );
        }
    }

    /// <summary>The assumptions for the answer.</summary>
    public JsonArray ToJson() => Json.Of(said);
}
