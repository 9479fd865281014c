using Heapwright.App.Diary;

namespace Heapwright.Web.Hosting;

/// <summary>
/// Somebody who signed in from another machine: the phone carries the token of a device in a cookie, and may do what the
/// role of the device allows, until its time is over or it is taken off the list.
/// </summary>
internal static class PairedDevice
{
    /// <summary>The cookie.</summary>
    public const string Cookie = "device";

    /// <summary>The page where a token is given, which needs none.</summary>
    public const string Page = "/pair";

    private const string Kept = "device";

    private static readonly string[] Diaries = ["/heaps", "/reading", "/outbox"];

    /// <summary>Where only the machine itself may write: who may do what, all that is kept, and where mail goes.</summary>
    private static readonly string[] OnlyHere =
    [
        "/settings/devices",
        "/settings/backup",
        "/settings/mail",
    ];

    /// <summary>Whether a request that writes may be let through for its cookie.</summary>
    /// <param name="context">The request.</param>
    public static async Task<bool> MayWrite(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        return context.Request.Path.Equals(Page, StringComparison.OrdinalIgnoreCase)
            || await Of(context) switch
            {
                { Role: DeviceRole.Coordinator } => !IsUnder(context, OnlyHere),
                { Role: DeviceRole.Volunteer } => IsUnder(context, Diaries),
                _ => false,
            };
    }

    /// <summary>The device whose token a request carries, if it may still write; null otherwise.</summary>
    /// <param name="context">The request.</param>
    public static async Task<Device?> Of(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        if (
            context.Request.Cookies[Cookie] is { Length: > 0 } token
            && await context
                .RequestServices.GetRequiredService<DiaryDesk>()
                .Devices.Of(token, context.RequestAborted)
                is { } device
        )
        {
            context.Items[Kept] = device;
            return device;
        }

        return null;
    }

    /// <summary>Who sends a request that was let through for its cookie, by name; empty where it was let through without.</summary>
    /// <param name="context">The request.</param>
    public static string NameOf(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        return (context.Items[Kept] as Device)?.Name ?? "";
    }

    private static bool IsUnder(HttpContext context, string[] places) =>
        places.Any(p =>
            context.Request.Path.StartsWithSegments(p, StringComparison.OrdinalIgnoreCase)
        );

    /// <summary>Forgets the token; the device stays on the list.</summary>
    /// <param name="context">The request.</param>
    public static void Forget(HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        context.Response.Cookies.Delete(Cookie);
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
