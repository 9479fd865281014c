using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.Web.Hosting;
using Microsoft.AspNetCore.Mvc;

namespace Heapwright.Web.Api;

/// <summary>
/// The questions of the contract over HTTP: the same JSON in, the same bytes out as on the command line, its sentences in
/// another language where <c>Accept-Language</c> asks for it. 200 is a yes, 422 an answered no with the same JSON, 400 a
/// question that is wrong, in one sentence.
/// </summary>
internal static class QuestionEndpoints
{
    /// <summary>The name by which messages call the body of a request.</summary>
    private const string Body = "request";

    public static void MapQuestions(this WebApplication app)
    {
        var api = app.MapGroup("/api").RequireRateLimiting(Limits.Questions).DisableAntiforgery();
        Map(api, "mix", input => MixAnswers.Answer(input));
        Map(api, "solve", input => SolveAnswers.Answer(input));
        Map(api, "recipe", input => RecipeAnswers.Answer(input));
        Map(api, "build", input => BuildAnswers.Answer(input));
        Map(
            api,
            "simulate",
            (input, stop) => SimulateAnswers.Answer(input, SimulateLimits.Web, cancellation: stop)
        );
        Map(
            api,
            "forecast",
            (input, stop) => ForecastAnswers.Answer(input, SimulateLimits.Web, cancellation: stop)
        );
        Map(api, "diagnose", input => DiagnoseAnswers.Answer(input));
        Map(api, "hygiene", input => HygieneAnswers.Answer(input));
        Map(api, "finish", input => FinishAnswers.Answer(input));
        Map(api, "materials/list", input => Found(input, () => MaterialAnswers.List()));
        Map(api, "materials/search", SearchMaterials);
        Map(api, "materials/show", ShowMaterial);
        Map(
            api,
            "materials/guess",
            input => new Answer(MaterialAnswers.Guess(input), Yes: true, "")
        );
    }

    private static Answer Found(Input input, Func<JsonObject> answer)
    {
        input.Fields("schema");
        return new Answer(answer(), Yes: true, "");
    }

    private static Answer SearchMaterials(Input input) =>
        new(
            MaterialAnswers.Search(input.Fields("text", "schema").Needed("text").Text()),
            Yes: true,
            ""
        );

    private static Answer ShowMaterial(Input input) =>
        new(MaterialAnswers.Show(input.Fields("id", "schema").Needed("id").Text()), Yes: true, "");

    private static void Map(RouteGroupBuilder api, string name, Func<Input, Answer> answer) =>
        Map(api, name, (input, _) => answer(input));

    private static void Map(
        RouteGroupBuilder api,
        string name,
        Func<Input, CancellationToken, Answer> answer
    ) =>
        api.MapPost("/" + name, (Delegate)(Task (HttpContext context) => Respond(context, answer)))
            .WithName(name.Replace('/', '_'))
            .Produces<JsonObject>(StatusCodes.Status200OK, "application/json")
            .Produces<JsonObject>(StatusCodes.Status422UnprocessableEntity, "application/json")
            .Produces<ApiError>(StatusCodes.Status400BadRequest, "application/json")
            .Produces<ApiError>(StatusCodes.Status413PayloadTooLarge, "application/json")
            .WithMetadata(new RequestSizeLimitAttribute(Input.LargestBytes));

    private static async Task Respond(
        HttpContext context,
        Func<Input, CancellationToken, Answer> answer
    )
    {
        byte[] bytes;
        int status;
        try
        {
            var given = answer(
                Input.Read(await ReadBody(context.Request), Body),
                context.RequestAborted
            );
            status = given.Yes ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity;
            bytes = AnswerBytes.Of(given.Json);
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            // Who asked is gone: nobody is left to answer.
            return;
        }
        catch (InputProblem problem)
        {
            status = StatusCodes.Status400BadRequest;
            bytes = AnswerBytes.Of(new JsonObject { ["error"] = problem.Message });
        }
        catch (BadHttpRequestException problem)
        {
            status = problem.StatusCode;
            bytes = AnswerBytes.Of(
                new JsonObject { ["error"] = Showing.Say.Of("guard.too_large", Input.LargestBytes) }
            );
        }

        context.Response.StatusCode = status;
        context.Response.ContentType = "application/json; charset=utf-8";
        context.Response.ContentLength = bytes.Length;
        await context.Response.Body.WriteAsync(bytes, context.RequestAborted);
    }

    internal static async Task<ReadOnlyMemory<byte>> ReadBody(HttpRequest request)
    {
        if (request.ContentLength > Input.LargestBytes)
        {
            throw new BadHttpRequestException("too large", StatusCodes.Status413PayloadTooLarge);
        }

        using var buffer = new MemoryStream();
        var chunk = new byte[16_384];
        int read;
        while ((read = await request.Body.ReadAsync(chunk, request.HttpContext.RequestAborted)) > 0)
        {
            buffer.Write(chunk, 0, read);
            if (buffer.Length > Input.LargestBytes)
            {
                throw new BadHttpRequestException(
                    "too large",
                    StatusCodes.Status413PayloadTooLarge
                );
            }
        }

        return buffer.ToArray();
    }
}
