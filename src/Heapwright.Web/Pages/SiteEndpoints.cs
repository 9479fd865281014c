using System.Globalization;
using Heapwright.App.BuildSheets;
using Heapwright.App.Changes;
using Heapwright.App.Ports;
using Heapwright.App.Sites;
using Heapwright.App.Texts;
using Heapwright.Web.Hosting;
using Heapwright.Web.Pages.Heaps;
using Heapwright.Web.Pages.Proving;
using Heapwright.Web.Showing;
using Microsoft.AspNetCore.Localization;
using Microsoft.AspNetCore.Mvc;

namespace Heapwright.Web.Pages;

/// <summary>What is no page: taps that lead back to one, and files.</summary>
internal static class SiteEndpoints
{
    private static readonly CookieOptions Kept = new()
    {
        MaxAge = TimeSpan.FromDays(3650),
        SameSite = SameSiteMode.Lax,
        IsEssential = true,
        HttpOnly = true,
    };

    public static void MapSite(this WebApplication app)
    {
        app.MapPost("/undo", Undo).ExcludeFromDescription();
        app.MapPost("/sample/out", SampleOut).ExcludeFromDescription();
        app.MapGet("/theme", Theme).ExcludeFromDescription();
        app.MapGet("/format", Format).ExcludeFromDescription();
        app.MapGet("/language", Language).ExcludeFromDescription();
        app.MapGet("/export", Export).ExcludeFromDescription();
        app.MapGet("/stock.csv", TableFiles.Stock).ExcludeFromDescription();
        app.MapGet("/heaps/{key}/diary.csv", TableFiles.Diary).ExcludeFromDescription();
        app.MapPost("/heat-proof/record", HeatProofForm.Print)
            .RequireRateLimiting(Limits.Questions)
            .ExcludeFromDescription();
        app.MapGet("/heaps/{key}/record.json", BatchFiles.Json)
            .RequireRateLimiting(Limits.Questions)
            .ExcludeFromDescription();
        app.MapGet("/heaps/{key}/record.pdf", BatchFiles.Pdf)
            .RequireRateLimiting(Limits.Questions)
            .ExcludeFromDescription();
        app.MapGet("/heaps/{key}/heat.pdf", BatchFiles.HeatPdf)
            .RequireRateLimiting(Limits.Questions)
            .ExcludeFromDescription();
        app.MapGet("/sheets/{key}/pdf", Pdf)
            .RequireRateLimiting(Limits.Questions)
            .ExcludeFromDescription();
    }

    private static async Task<IResult> Undo(
        [FromForm] long act,
        [FromForm] string? back,
        SiteRecorder recorder,
        CancellationToken cancel
    )
    {
        var outcome = await recorder.Undo(act, cancel);
        var url = LocalUrl.Safe(back);
        return Results.LocalRedirect(
            outcome.Act is { } done
                ? LocalUrl.With(url, "done", done.Number.ToString(CultureInfo.InvariantCulture))
                : LocalUrl.With(
                    url,
                    "refused",
                    outcome.Refusals.IsEmpty
                        ? "act_superseded"
                        : outcome.Refusals[0].Why.Code.Split('.')[^1]
                )
        );
    }

    private static async Task<IResult> SampleOut(
        IFormCollection form,
        SampleGarden sample,
        CancellationToken cancel
    )
    {
        // Reading the form is what has its token checked.
        _ = form.Count;
        var outcome = await sample.TakeOut(cancel);
        return Results.LocalRedirect(
            outcome.Act is { } act
                ? LocalUrl.With("/", "done", act.Number.ToString(CultureInfo.InvariantCulture))
                : "/"
        );
    }

    // How bright a page is belongs to the device, not to the site: it is kept in a cookie and writes nothing here.
    private static IResult Theme(HttpContext context, string? set, string? back)
    {
        if (set is not null && Themes.All.Contains(set, StringComparer.Ordinal))
        {
            context.Response.Cookies.Append(Themes.Cookie, set, Kept);
        }

        return Results.LocalRedirect(LocalUrl.Safe(back));
    }

    private static IResult Format(HttpContext context, string? set, string? back)
    {
        if (set is not null && Cultures.All.Contains(set, StringComparer.Ordinal))
        {
            context.Response.Cookies.Append(
                Cultures.Cookie,
                CookieRequestCultureProvider.MakeCookieValue(new RequestCulture(set, "en")),
                Kept
            );
        }

        return Results.LocalRedirect(LocalUrl.Safe(back));
    }

    private static IResult Language(HttpContext context, string? set, string? back)
    {
        if (set is not null && Languages.All.Contains(set, StringComparer.Ordinal))
        {
            context.Response.Cookies.Append(Cultures.LanguageCookie, set, Kept);
        }

        return Results.LocalRedirect(LocalUrl.Safe(back));
    }

    private static async Task<IResult> Export(CarrySite carry, Here here, CancellationToken cancel)
    {
        await here.Read(cancel);
        var text = await carry.Export(cancel);
        var day = NodaTime.Text.LocalDatePattern.Iso.Format(here.Today);
        return Results.File(
            System.Text.Encoding.UTF8.GetBytes(text),
            "application/json",
            $"heapwright-{day}.json"
        );
    }

    private static async Task<IResult> Pdf(
        string key,
        string? paper,
        IItemStore store,
        Here here,
        CancellationToken cancel
    )
    {
        await here.Read(cancel);
        var sheet = Guid.TryParseExact(key, "N", out var id)
            ? await store.Find<SavedSheet>(id, cancel)
            : null;
        if (sheet is null || SheetDrawings.Plan(sheet, here.Show) is not { } plan)
        {
            return Results.NotFound();
        }

        return Results.File(
            SheetDrawings.Pdf(plan, PaperWords.Of(paper), sheet.MadeAt),
            "application/pdf",
            "build-sheet.pdf"
        );
    }
}
