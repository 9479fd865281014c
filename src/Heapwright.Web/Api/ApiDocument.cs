using System.Reflection;
using System.Text.Json.Nodes;
using Microsoft.OpenApi;
using Microsoft.OpenApi.Reader;

namespace Heapwright.Web.Api;

/// <summary>The document at /openapi/v1.json: what each question and answer looks like, with an example that works.</summary>
internal static class ApiDocument
{
    public static void Add(IServiceCollection services) =>
        services.AddOpenApi(
            "v1",
            options =>
            {
                options.AddDocumentTransformer(
                    (document, _, _) =>
                    {
                        document.Info = new OpenApiInfo
                        {
                            Title = "Heapwright",
                            Version = "1",
                            Description =
                                "The questions of the command line over HTTP, with the same JSON. 200 is a yes, 422 an answered no, 400 a question that is wrong.",
                        };
                        document.Servers?.Clear();
                        Share(document);
                        return Task.CompletedTask;
                    }
                );
                options.AddOperationTransformer(
                    (operation, context, _) =>
                    {
                        Describe(operation, context.Document!);
                        return Task.CompletedTask;
                    }
                );
            }
        );

    private static void Describe(OpenApiOperation operation, OpenApiDocument document)
    {
        if (operation.OperationId is not { } name || Text(name) is not { } text)
        {
            return;
        }

        var described = JsonNode.Parse(text)!.AsObject();
        operation.Summary = described["summary"]!.GetValue<string>();
        var example = described["example"]!;
        operation.RequestBody = new OpenApiRequestBody
        {
            Required = true,
            Content = new Dictionary<string, OpenApiMediaType>(StringComparer.Ordinal)
            {
                ["application/json"] = new()
                {
                    Schema = Schema(described["question"]!, document),
                    Example = example.DeepClone(),
                },
            },
        };
        var answer = Schema(described["answer"]!, document);
        foreach (var (status, response) in operation.Responses ?? [])
        {
            if (response is OpenApiResponse concrete)
            {
                concrete.Description = status switch
                {
                    "200" => "Answered.",
                    "422" => "Answered, and the answer is no; the JSON says why.",
                    "401" => "No token of a device that may send.",
                    "404" => "There is no such heap.",
                    "413" => "The question is larger than what is read.",
                    _ => "The question is wrong: one sentence says where.",
                };
                if (status is "200" or "422" && concrete.Content is not null)
                {
                    foreach (var media in concrete.Content.Values.OfType<OpenApiMediaType>())
                    {
                        media.Schema = answer;
                    }
                }
            }
        }
    }

    // What several questions have in common stands once, and they refer to it.
    private static void Share(OpenApiDocument document)
    {
        document.Components ??= new OpenApiComponents();
        document.Components.Schemas ??= new Dictionary<string, IOpenApiSchema>(
            StringComparer.Ordinal
        );
        foreach (var (name, schema) in JsonNode.Parse(Text("shared")!)!.AsObject())
        {
            document.Components.Schemas[name] = Schema(schema!, document);
        }
    }

    private static IOpenApiSchema Schema(JsonNode json, OpenApiDocument document) =>
        OpenApiModelFactory.Parse<OpenApiSchema>(
            json.ToJsonString(),
            OpenApiSpecVersion.OpenApi3_1,
            document,
            out _,
            "json"
        )!;

    private static string? Text(string operation)
    {
        using var stream = Assembly
            .GetExecutingAssembly()
            .GetManifestResourceStream($"schemas/{operation}.json");
        if (stream is null)
        {
            return null;
        }

        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
