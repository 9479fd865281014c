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
        var measures = assumptions.Measures;
        var text = new StringBuilder();
        foreach (var part in mixture.Parts)
        {
            var kg = MixAnswers.Total(part, b => b.WetMass);
            text.Append(
                CultureInfo.InvariantCulture,
                $"{UnitWords.Amount(part.Ingredient.Amount.Typical, part.Ingredient.Unit)} {part.Ingredient.Name}"
            );
            text.AppendLine(kg is { } mass ? $"  ({measures.MassRange(mass)})" : "");
        }

        text.AppendLine();
        foreach (var verdict in Verdict.On(mixture))
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"{Words.Of("quantities." + verdict.Aim.Quantity, null, measures.DensityUnit), -30} {Figures.Range(Value(verdict, measures), measures.Culture), -17} {Words.Of("quantities.status_" + MixAnswers.StatusWord(verdict.Status)), -10} {Words.Of(verdict.Why)}"
            );
            text.AppendLine();
        }

        if (mixture.Quantity(s => s.Matter.WetMass) is { } all)
        {
            text.AppendLine(Words.Of("quantities.wet_mass", null, measures.MassRange(all)));
        }

        if (mixture.Quantity(s => s.FilledVolume) is { } filled)
        {
            text.AppendLine(
                Words.Of("quantities.filled_volume", null, measures.VolumeRange(filled))
            );
        }

        foreach (var note in RuleOfThumb.Notes(mixture))
        {
            text.AppendLine().AppendLine(measures.Say(note));
        }

        Figures.AppendList(text, Words.Of("quantities.assumed"), assumptions.All);
        MaterialCautions.Append(text, cautions);
        return text.ToString();
    }

    private static Spread Value(Verdict verdict, Measures measures) =>
        verdict.Aim.Quantity == "bulk_density_kg_m3"
            ? measures.InDensity(verdict.Value)
            : verdict.Value;
}
