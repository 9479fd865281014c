using System.Text.Json.Nodes;
using Heapwright.App.Sites;

namespace Heapwright.Web.Showing;

/// <summary>A build sheet as a page shows it.</summary>
public sealed class SheetView
{
    /// <summary>A view of a kept sheet.</summary>
    /// <param name="sheet">The sheet.</param>
    public SheetView(SavedSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        Sheet = sheet;
        Answer = JsonObject.Create(sheet.Answer) ?? [];
        Layers =
        [
            .. Answer
                .Objects("layers")
                .Select(
                    (layer, i) =>
                        new LayerView(
                            (int)(layer.Number("number") ?? i + 1),
                            layer,
                            sheet.Ticked.Contains((int)(layer.Number("number") ?? i + 1))
                        )
                ),
        ];
    }

    /// <summary>The sheet.</summary>
    public SavedSheet Sheet { get; }

    /// <summary>Its name.</summary>
    public string Name => Sheet.Name;

    /// <summary>The answer of <c>build</c>.</summary>
    public JsonObject Answer { get; }

    /// <summary>The layers from the ground up.</summary>
    public IReadOnlyList<LayerView> Layers { get; }

    /// <summary>How many are done.</summary>
    public int Done => Layers.Count(l => l.IsDone);

    /// <summary>The number of the next layer to build; 0 when all are done.</summary>
    public int Next => Layers.FirstOrDefault(l => !l.IsDone)?.Number ?? 0;

    /// <summary>How high the heap stands with the layers that are done.</summary>
    public double StandsAtMetres =>
        Layers.Where(l => l.IsDone).Sum(l => l.Json.Number("thickness_cm") ?? 0) / 100;

    /// <summary>The address of its page.</summary>
    public string Url => $"/sheets/{Sheet.Id:N}";
}
