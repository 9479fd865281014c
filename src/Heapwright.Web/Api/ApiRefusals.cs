using System.Text.Json.Nodes;
using Heapwright.App.Contract;

namespace Heapwright.Web.Api;

/// <summary>Says in one sentence, as JSON, why nothing is answered at an address of the API, instead of an empty body.</summary>
internal static class ApiRefusals
{
    public static void UseApiRefusals(this WebApplication app) =>
        app.Use(
            async (context, next) =>
            {
                await next(context);
                if (
                    context.Request.Path.StartsWithSegments(
                        "/api",
                        StringComparison.OrdinalIgnoreCase
                    )
                    && !context.Response.HasStarted
                    && Refusal(context) is { } sentence
                )
                {
                    await Write(context, sentence);
                }
            }
        );

    private static string? Refusal(HttpContext context) =>
        context.Response.StatusCode switch
        {
            StatusCodes.Status404NotFound => Showing.Say.Of(
                "guard.no_question",
                context.Request.Path.Value ?? ""
            ),
            StatusCodes.Status405MethodNotAllowed => Showing.Say.Of(
                "guard.other_method",
                context.Request.Path.Value ?? "",
                context.Response.Headers.Allow.ToString(),
                context.Request.Method
            ),
            _ => null,
        };

    private static async Task Write(HttpContext context, string sentence)
    {
        var bytes = AnswerBytes.Of(new JsonObject { ["error"] = sentence });
        context.Response.ContentType = "application/json; charset=utf-8";
        context.Response.ContentLength = bytes.Length;
        if (!HttpMethods.IsHead(context.Request.Method))
        {
            await context.Response.Body.WriteAsync(bytes, context.RequestAborted);
        }
    }
}
