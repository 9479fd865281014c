namespace Heapwright.Web.Hosting;

/// <summary>What every answer tells the browser it may and may not do.</summary>
internal static class SecurityHeaders
{
    public static IApplicationBuilder UseSecurityHeaders(this IApplicationBuilder app)
    {
        // Everything comes from here; nothing runs from within a page, and no style but the one that is named.
        var policy =
            $"default-src 'self'; script-src 'self'; style-src 'self' {app.ApplicationServices.GetRequiredService<FirstStyle>().Source}; "
            + "img-src 'self'; font-src 'self'; connect-src 'self'; object-src 'none'; base-uri 'self'; form-action 'self'; "
            + "frame-ancestors 'none'";
        return app.Use(
            (context, next) =>
            {
                var headers = context.Response.Headers;
                headers.ContentSecurityPolicy = policy;
                headers.XContentTypeOptions = "nosniff";
                headers.XFrameOptions = "DENY";
                headers["Referrer-Policy"] = "same-origin";
                headers["Permissions-Policy"] =
                    "camera=(), microphone=(), geolocation=(), payment=(), usb=()";
                headers["Cross-Origin-Opener-Policy"] = "same-origin";
                headers["Cross-Origin-Resource-Policy"] = "same-origin";
                return next(context);
            }
        );
    }
}
