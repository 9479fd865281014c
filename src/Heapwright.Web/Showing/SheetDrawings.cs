using Heapwright.App.BuildSheets;
using Heapwright.App.Contract;
using Heapwright.App.Drawings;
using Heapwright.App.Paper;
using Heapwright.App.Sites;

namespace Heapwright.Web.Showing;

/// <summary>The drawing and the paper of a kept sheet, made again from its question.</summary>
public static class SheetDrawings
{
    /// <summary>The plan of a kept sheet in this site's measures.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="show">How quantities are shown.</param>
    /// <returns>Null where the question can no longer be read, as when it names a material that is gone.</returns>
    public static BuildSheet? Plan(SavedSheet sheet, Shown show)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(show);
        try
        {
            return BuildAnswers.Sheet(Questions.Input(sheet.Question), show.Measures);
        }
        catch (InputProblem)
        {
            return null;
        }
    }

    /// <summary>The drawing, for within a page.</summary>
    /// <param name="plan">The plan.</param>
    public static string Svg(BuildSheet plan) =>
        HeapSvg.Of(plan, PictureSize.Narrow, SvgUse.Page, "heap");

    /// <summary>The sheet on paper.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="madeAt">When the sheet was made.</param>
    public static byte[] Pdf(BuildSheet plan, PaperSize paper, NodaTime.Instant madeAt) =>
        BuildSheetPdf.Render(plan, paper, madeAt.ToDateTimeOffset());
}
