using System.Globalization;
using System.Text;
using Heapwright.App.BuildSheets;
using Heapwright.App.Texts;
using Heapwright.Core.BuildPlans;

namespace Heapwright.App.Contract;

/// <summary>The answer to <c>build</c> in words: the top layer first, as it will stand.</summary>
internal static class BuildText
{
    public static string Of(BuildSheet sheet)
    {
        var plan = sheet.Plan;
        var measures = sheet.Measures;
        var text = new StringBuilder();
        text.AppendLine(SheetWords.Bin(plan.Bin, measures));
        text.AppendLine(SheetWords.Subtitle(plan, measures));
        text.AppendLine(SheetWords.Facts(plan, measures));
        List(text, "before", SheetWords.PrepareFirst(plan));
        text.AppendLine();
        var wide = plan.Layers.Max(l => SheetWords.Water(l, measures).Length);
        foreach (var layer in plan.Layers)
        {
            Append(text, layer, measures, wide);
        }

        text.AppendLine().AppendLine(Words.Of("buildplans.how"));
        List(text, "notes", [.. plan.Notes.Select(measures.Say)]);
        List(text, "left_over", [.. plan.LeftOver.Select(p => SheetWords.Part(p, measures))]);
        List(text, "tools", [string.Join(", ", plan.Tools.Select(SheetWords.Tool))]);
        List(text, "place", [.. plan.Place.Select(SheetWords.Place)]);
        List(text, "cautions", [.. sheet.Cautions.Select(c => c.Text)]);
        List(text, "assumptions", sheet.Assumptions);
        return text.ToString();
    }

    private static void Append(StringBuilder text, BuildLayer layer, Measures measures, int wide)
    {
        var parts = string.Join(" + ", layer.Parts.Select(p => SheetWords.Part(p, measures)));
        var water = SheetWords.Water(layer, measures).PadLeft(wide);
        text.Append(
                CultureInfo.InvariantCulture,
                $"{layer.Number, 3}  {measures.Short(layer.Thickness), 6}  {water}  {parts}"
            )
            .AppendLine();
        var todo = SheetWords.Then(layer);
        if (todo.Length > 0)
        {
            text.Append(' ', wide + 15).AppendLine(todo);
        }
    }

    private static void List(StringBuilder text, string heading, IReadOnlyCollection<string> lines)
    {
        Figures.AppendList(text, Words.Of("buildplans.heading_" + heading), lines);
    }
}
