using System.Text;
using Heapwright.App.Coming;
using Heapwright.App.Links;
using Heapwright.App.Sites;
using Heapwright.Web.Hosting;
using Heapwright.Web.Showing;

namespace Heapwright.Web.Links;

/// <summary>What programs fetch from a secret address.</summary>
internal static class LinkEndpoints
{
    /// <summary>Where calendars are fetched.</summary>
    public const string Calendars = "/calendar";

    /// <summary>Where shared heaps are shown.</summary>
    public const string Shared = "/s";

    public static void MapLinks(this WebApplication app) =>
        app.MapGet(Calendars + "/{token}.ics", Calendar)
            .RequireRateLimiting(Limits.Links)
            .ExcludeFromDescription();

    /// <summary>Whether an address is one that is shown to whoever has it, apart from all others.</summary>
    /// <param name="path">The path.</param>
    public static bool IsSecret(PathString path) =>
        path.StartsWithSegments(Shared, StringComparison.OrdinalIgnoreCase)
        || path.StartsWithSegments(Calendars, StringComparison.OrdinalIgnoreCase);

    /// <summary>What an answer under a secret address tells everyone on its way.</summary>
    /// <param name="context">The request.</param>
    public static void Hide(HttpContext context)
    {
        var headers = context.Response.Headers;
        headers.CacheControl = "private, no-cache";
        headers["X-Robots-Tag"] = "noindex, nofollow";
        headers["Referrer-Policy"] = "no-referrer";
    }

    private static async Task<IResult> Calendar(
        string token,
        HttpContext context,
        KeepLinks links,
        ComingDays coming,
        Here here,
        TimeProvider clock,
        CancellationToken cancel
    )
    {
        if (await links.Of(token, LinkPurpose.Calendar, cancel) is null)
        {
            return Results.NotFound();
        }

        await here.Read(cancel);
        var days = await coming.From(clock.Now(), here.Zone, cancel);
        var request = context.Request;
        return Results.Text(
            CalendarText.Of(
                days,
                here.Site?.Name ?? "Heapwright",
                $"{request.Scheme}://{request.Host}",
                here.Show.Culture
            ),
            "text/calendar",
            Encoding.UTF8
        );
    }
}
