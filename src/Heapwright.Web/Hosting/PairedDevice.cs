using Heapwright.App.Diary;

namespace Heapwright.Web.Hosting;

/// <summary>
/// A phone that was let in: it carries the token of a device in a cookie, and may write into diaries and nothing else
/// until the device is taken off the list.
/// </summary>
internal static class PairedDevice
{
    /// <summary>The cookie.</summary>
    public const string Cookie = "device";

    /// <summary>The page where a token is given, which needs none.</summary>
    public const string Page = "/pair";

    private static readonly string[] Places = ["/heaps", "/reading", "/outbox"];

    /// <summary>Whether a request that writes may be let through for its cookie.</summary>
    /// <param name="context">The request.</param>
    public static async Task<bool> MayWrite(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        var path = context.Request.Path;
        return path.Equals(Page, StringComparison.OrdinalIgnoreCase)
            || (
                Places.Any(p => path.StartsWithSegments(p, StringComparison.OrdinalIgnoreCase))
                && context.Request.Cookies[Cookie] is { Length: > 0 } token
                && await context
                    .RequestServices.GetRequiredService<DiaryDesk>()
                    .Devices.Of(token, context.RequestAborted)
                    is not null
            );
    }

    /// <summary>Keeps a token that was found good.</summary>
    /// <param name="context">The request.</param>
    /// <param name="token">The token.</param>
    public static void Keep(HttpContext context, string token)
    {
        ArgumentNullException.ThrowIfNull(context);
        context.Response.Cookies.Append(
            Cookie,
            token,
            new CookieOptions
            {
                HttpOnly = true,
                Secure = context.Request.IsHttps,
                SameSite = SameSiteMode.Lax,
                MaxAge = TimeSpan.FromDays(3650),
                IsEssential = true,
            }
        );
    }
}
