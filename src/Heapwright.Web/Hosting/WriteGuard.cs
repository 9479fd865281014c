using System.Net;
using Heapwright.Web.Showing;

namespace Heapwright.Web.Hosting;

/// <summary>
/// Only this machine may write, and whoever signed in from another with the token of a device (see
/// <see cref="PairedDevice"/>) as its role allows; and only pages of this site may send a request that writes.
/// Questions to the API write nothing and may come from elsewhere, but not from a page of another site.
/// </summary>
internal static class WriteGuard
{
    private static readonly string[] Forwarding =
    [
        "Forwarded",
        "X-Forwarded-For",
        "X-Forwarded-Host",
        "X-Real-IP",
    ];

    public static IApplicationBuilder UseWriteGuard(this IApplicationBuilder app) =>
        app.Use(
            async (context, next) =>
            {
                if (await Refusal(context) is { } code)
                {
                    await Refuse(context, code);
                    return;
                }

                await next(context);
            }
        );

    private static async Task<string?> Refusal(HttpContext context)
    {
        var request = context.Request;
        if (HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method))
        {
            return null;
        }

        if (!IsFromHere(request))
        {
            return "guard.other_site";
        }

        return
            request.Path.StartsWithSegments("/api", StringComparison.OrdinalIgnoreCase)
            || IsThisMachine(context)
            || await PairedDevice.MayWrite(context)
            ? null
            : "guard.other_machine";
    }

    // Browsers say where a request comes from; programs that are not browsers say nothing and are let pass.
    private static bool IsFromHere(HttpRequest request)
    {
        var site = request.Headers["Sec-Fetch-Site"].ToString();
        if (site.Length > 0 && site is not ("same-origin" or "none"))
        {
            return false;
        }

        var origin = request.Headers.Origin.ToString();
        return origin.Length == 0
            || (
                Uri.TryCreate(origin, UriKind.Absolute, out var uri)
                && string.Equals(uri.Scheme, request.Scheme, StringComparison.OrdinalIgnoreCase)
                && string.Equals(
                    uri.Authority,
                    Authority(request),
                    StringComparison.OrdinalIgnoreCase
                )
            );
    }

    private static string Authority(HttpRequest request)
    {
        var usual = string.Equals(request.Scheme, "https", StringComparison.Ordinal) ? 443 : 80;
        return request.Host.Port == usual ? request.Host.Host : request.Host.Value ?? "";
    }

    /// <summary>Whether a request comes from the machine that runs the program.</summary>
    /// <param name="context">The request.</param>
    // A proxy on this machine would make everyone look local; what it adds gives it away.
    public static bool IsThisMachine(HttpContext context) =>
        context.Connection.RemoteIpAddress is { } address
        && IPAddress.IsLoopback(address)
        && !Forwarding.Any(context.Request.Headers.ContainsKey);

    private static async Task Refuse(HttpContext context, string code)
    {
        context.Response.StatusCode = StatusCodes.Status403Forbidden;
        if (
            context.Request.Path.StartsWithSegments("/api", StringComparison.OrdinalIgnoreCase)
            || context.Request.Path.StartsWithSegments(
                "/outbox",
                StringComparison.OrdinalIgnoreCase
            )
        )
        {
            await context.Response.WriteAsJsonAsync(new { error = Say.Of(code) });
            return;
        }

        context.Response.ContentType = "text/plain; charset=utf-8";
        await context.Response.WriteAsync(Say.Of(code));
    }
}
