using System.Threading.RateLimiting;
using Heapwright.App.Contract;
using Heapwright.App.Sites;
using Heapwright.Web.Showing;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.RateLimiting;

namespace Heapwright.Web.Hosting;

/// <summary>How much one request, and one caller, may ask for.</summary>
internal static class Limits
{
    /// <summary>Requests that one address may send in ten seconds; a person tapping fast sends some thirty.</summary>
    public const int RequestsInTenSeconds = 3000;

    /// <summary>Questions that are worked on at once; others wait their turn.</summary>
    public static int QuestionsAtOnce => Math.Max(2, Environment.ProcessorCount);

    /// <summary>The policy for endpoints that compute.</summary>
    public const string Questions = "questions";

    /// <summary>The policy for secret addresses, so that nobody tries many.</summary>
    public const string Links = "links";

    /// <summary>Requests for secret addresses that one address may send in a minute.</summary>
    public const int LinksInAMinute = 60;

    public static void Add(WebApplicationBuilder builder)
    {
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = CarrySite.LargestBytes + 65_536;
            kestrel.Limits.MaxRequestLineSize = 16_384;
            kestrel.Limits.MaxRequestHeadersTotalSize = 32_768;
            kestrel.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(20);
        });
        builder.Services.Configure<FormOptions>(form =>
        {
            form.ValueCountLimit = 400;
            form.KeyLengthLimit = 200;
            form.ValueLengthLimit = Input.LargestBytes;
            form.MultipartBodyLengthLimit = CarrySite.LargestBytes + 32_768;
        });
        builder.Services.AddRateLimiter(limiter =>
        {
            limiter.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
            limiter.OnRejected = async (rejected, cancel) =>
            {
                rejected.HttpContext.Response.ContentType = "text/plain; charset=utf-8";
                rejected.HttpContext.Response.Headers.RetryAfter = "10";
                await rejected.HttpContext.Response.WriteAsync(Say.Of("guard.too_many"), cancel);
            };
            limiter.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, string>(context =>
                RateLimitPartition.GetFixedWindowLimiter(
                    context.Connection.RemoteIpAddress?.ToString() ?? "",
                    _ => new FixedWindowRateLimiterOptions
                    {
                        PermitLimit = RequestsInTenSeconds,
                        Window = TimeSpan.FromSeconds(10),
                    }
                )
            );
            limiter.AddPolicy(
                Links,
                context =>
                    RateLimitPartition.GetFixedWindowLimiter(
                        context.Connection.RemoteIpAddress?.ToString() ?? "",
                        _ => new FixedWindowRateLimiterOptions
                        {
                            PermitLimit = LinksInAMinute,
                            Window = TimeSpan.FromMinutes(1),
                        }
                    )
            );
            limiter.AddConcurrencyLimiter(
                Questions,
                options =>
                {
                    options.PermitLimit = QuestionsAtOnce;
                    options.QueueLimit = 200;
                    options.QueueProcessingOrder = QueueProcessingOrder.OldestFirst;
                }
            );
        });
    }
}
