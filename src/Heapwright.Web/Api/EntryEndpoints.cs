using System.Globalization;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
using Heapwright.App.Texts;
using Heapwright.Core.Readings;
using Heapwright.Web.Showing;
using Microsoft.AspNetCore.Mvc;

namespace Heapwright.Web.Api;

/// <summary>
/// Entries from devices: a list in JSON, a token that says who sends. Every entry is answered by itself: kept (it has
/// reached the disk), already there, or refused with the reason.
/// </summary>
internal static class EntryEndpoints
{
    private const string Scheme = "Bearer ";

    public static void MapEntries(this WebApplication app) =>
        app.MapPost(
                "/api/heaps/{id}/entries",
                (Delegate)(Task (HttpContext context) => Take(context))
            )
            .WithName("entries")
            .DisableAntiforgery()
            .Produces<JsonObject>(StatusCodes.Status200OK, "application/json")
            .Produces<JsonObject>(StatusCodes.Status422UnprocessableEntity, "application/json")
            .Produces<ApiError>(StatusCodes.Status400BadRequest, "application/json")
            .Produces<ApiError>(StatusCodes.Status401Unauthorized, "application/json")
            .Produces<ApiError>(StatusCodes.Status404NotFound, "application/json")
            .WithMetadata(new RequestSizeLimitAttribute(Input.LargestBytes));

    private static async Task Take(HttpContext context)
    {
        var desk = context.RequestServices.GetRequiredService<DiaryDesk>();
        var stop = context.RequestAborted;
        var header = context.Request.Headers.Authorization.ToString();
        var token = header.StartsWith(Scheme, StringComparison.OrdinalIgnoreCase)
            ? header[Scheme.Length..].Trim()
            : "";
        if (token.Length == 0 || await desk.Devices.Of(token, stop) is not { } device)
        {
            context.Response.Headers.WWWAuthenticate = "Bearer";
            await Write(context, StatusCodes.Status401Unauthorized, Fault("guard.no_token"));
            return;
        }

        var heapId = Guid.TryParse(
            context.Request.RouteValues["id"] as string,
            CultureInfo.InvariantCulture,
            out var id
        )
            ? id
            : Guid.Empty;
        if (
            heapId == Guid.Empty
            || await desk.Entries.Arrive(heapId, EntryWay.Http, stop, device.Name)
                is not { } arrival
        )
        {
            await Write(context, StatusCodes.Status404NotFound, Fault("guard.no_heap"));
            return;
        }

        try
        {
            var input = Input.Read(await QuestionEndpoints.ReadBody(context.Request), "request");
            var answer = DiaryAnswers.Results(
                await desk.Sent.Take(input, arrival, stop),
                Measures.Metric
            );
            await Write(
                context,
                answer.Yes ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity,
                answer.Json
            );
        }
        catch (InputProblem problem)
        {
            await Write(
                context,
                StatusCodes.Status400BadRequest,
                new JsonObject { ["error"] = problem.Message }
            );
        }
        catch (BadHttpRequestException problem)
        {
            await Write(
                context,
                problem.StatusCode,
                new JsonObject { ["error"] = Say.Of("guard.too_large", Input.LargestBytes) }
            );
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            // Who sent it is gone; it is sent again, and counts once.
        }
    }

    private static JsonObject Fault(string code) => new() { ["error"] = Say.Of(code) };

    private static async Task Write(HttpContext context, int status, JsonObject json)
    {
        var bytes = AnswerBytes.Of(json);
        context.Response.StatusCode = status;
        context.Response.ContentType = "application/json; charset=utf-8";
        context.Response.ContentLength = bytes.Length;
        await context.Response.Body.WriteAsync(bytes, context.RequestAborted);
    }
}
