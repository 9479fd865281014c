using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Library;
using Heapwright.App.Texts;
using Heapwright.Core.Mixtures;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Contract;

/// <summary>The answer to <c>mix</c> in words.</summary>
internal static class MixText
{
    public static string Of(Mixture mixture, Assumptions assumptions, JsonArray cautions)
    {
        var text = new StringBuilder();
        foreach (var part in mixture.Parts)
        {
            var kg = MixAnswers.Total(part, b => b.WetMass);
            text.Append(
                CultureInfo.InvariantCulture,
                $"{UnitWords.Amount(part.Ingredient.Amount.Typical, part.Ingredient.Unit)} {part.Ingredient.Name}"
            );
            text.AppendLine(kg is { } mass ? $"  ({Figures.Range(mass)} kg)" : "");
        }

        text.AppendLine();
        foreach (var verdict in Verdict.On(mixture))
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"{Words.Of("quantities." + verdict.Aim.Quantity), -30} {Figures.Range(verdict.Value), -17} {Words.Of("quantities.status_" + MixAnswers.StatusWord(verdict.Status)), -10} {Words.Of(verdict.Why)}"
            );
            text.AppendLine();
        }

        Append(text, "quantities.wet_mass", mixture.Quantity(s => s.Matter.WetMass));
        Append(text, "quantities.filled_volume", mixture.Quantity(s => s.FilledVolume));
        foreach (var note in RuleOfThumb.Notes(mixture))
        {
            text.AppendLine().AppendLine(Words.Of(note));
        }

        Figures.AppendList(text, Words.Of("quantities.assumed"), assumptions.All);
        MaterialCautions.Append(text, cautions);
        return text.ToString();
    }

    private static void Append(StringBuilder text, string code, Spread? value)
    {
        if (value is { } known)
        {
            text.AppendLine(Words.Of(code, CultureInfo.InvariantCulture, Figures.Range(known)));
        }
    }
}
