using System.Text.Json.Nodes;
using Heapwright.App.Contract;

namespace Heapwright.Web.Api;

/// <summary>Says in one sentence, as JSON, why nothing is answered at an address of the API, instead of an empty body.</summary>
internal static class ApiRefusals
{
    public static void MapApiRefusals(this WebApplication app) =>
        app.Map("/api/{**rest}", (Delegate)(Task (HttpContext context) => Refuse(context)))
            .ExcludeFromDescription()
            .DisableAntiforgery();

    private static async Task Refuse(HttpContext context)
    {
        var path = context.Request.Path.Value ?? "";
        var methods = MethodsOf(context, path);
        context.Response.StatusCode =
            methods.Count == 0
                ? StatusCodes.Status404NotFound
                : StatusCodes.Status405MethodNotAllowed;
        if (methods.Count > 0)
        {
            context.Response.Headers.Allow = string.Join(", ", methods);
        }

        var sentence =
            methods.Count == 0
                ? Showing.Say.Of("guard.no_question", path)
                : Showing.Say.Of(
                    "guard.other_method",
                    path,
                    string.Join(", ", methods),
                    context.Request.Method
                );
        var bytes = AnswerBytes.Of(new JsonObject { ["error"] = sentence });
        context.Response.ContentType = "application/json; charset=utf-8";
        context.Response.ContentLength = bytes.Length;
        if (!HttpMethods.IsHead(context.Request.Method))
        {
            await context.Response.Body.WriteAsync(bytes, context.RequestAborted);
        }
    }

    // What the address would answer to.
    private static IReadOnlyList<string> MethodsOf(HttpContext context, string path) =>
        [
            .. context
                .RequestServices.GetRequiredService<EndpointDataSource>()
                .Endpoints.OfType<RouteEndpoint>()
                .Where(e =>
                    string.Equals(
                        "/" + e.RoutePattern.RawText?.Trim('/'),
                        "/" + path.Trim('/'),
                        StringComparison.OrdinalIgnoreCase
                    )
                )
                .SelectMany(e => e.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods ?? [])
                .Distinct(StringComparer.Ordinal),
        ];
}
