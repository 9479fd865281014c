using System.Net;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Heapwright.Web.Tests;

public sealed class ApiTests(SiteUnderTest site) : IClassFixture<SiteUnderTest>
{
    private const string Question =
        """{"ingredients":[{"material":"grass_clippings_fresh","amount":{"value":2,"unit":"wheelbarrow"}},{"material":"leaves_mixed_dry","amount":{"value":4,"unit":"wheelbarrow"}}],"water_l":20}""";

    private static readonly CancellationToken Never = CancellationToken.None;

    [Theory]
    [InlineData(
        "GET",
        "/api/mix",
        HttpStatusCode.MethodNotAllowed,
        "/api/mix answers to POST, not to GET."
    )]
    [InlineData("POST", "/api/mixx", HttpStatusCode.NotFound, "There is no question at /api/mixx;")]
    public async Task Address_WithoutAnAnswer_SaysSoInOneSentence(
        string method,
        string path,
        HttpStatusCode status,
        string sentence
    )
    {
        using var request = new HttpRequestMessage(new HttpMethod(method), path);
        using var caller = site.Caller();
        using var answer = await caller.SendAsync(request, Never);

        Assert.Equal(status, answer.StatusCode);
        Assert.Equal("application/json", answer.Content.Headers.ContentType!.MediaType);
        Assert.StartsWith(
            sentence,
            JsonNode.Parse(await answer.Content.ReadAsStringAsync(Never))![
                "error"
            ]!.GetValue<string>(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task Mix_OverTheWeb_HasTheSameBytesAsOnTheCommandLine()
    {
        var file = Path.GetTempFileName();
        await File.WriteAllTextAsync(file, Question, Never);
        using var console = new MemoryStream();
        var answer = await Post("mix", Question);

        var printed = await CommandLineOutput("mix", "--json", "--input", file);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(printed, await answer.Content.ReadAsStringAsync(Never));
        File.Delete(file);
    }

    [Fact]
    public async Task Simulate_OverTheWeb_HasTheSameBytesAsOnTheCommandLine()
    {
        const string Heap =
            """{"bin":{"length_m":1,"width_m":1,"height_m":1},"ingredients":[{"material":"horse_manure_straw","amount":{"value":6,"unit":"wheelbarrow"}}],"water_l":20,"days":2,"members":10}""";
        var file = Path.GetTempFileName();
        await File.WriteAllTextAsync(file, Heap, Never);
        var answer = await Post("simulate", Heap);

        var printed = await CommandLineOutput("simulate", "--json", "--input", file);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(printed, await answer.Content.ReadAsStringAsync(Never));
        File.Delete(file);
    }

    [Fact]
    public async Task Hygiene_RuleNamedAndNotMet_IsAnAnsweredNoWithTheBytesOfTheCommandLine()
    {
        const string Log =
            """{"process":"bin","readings":[{"day":1,"temperature_c":50},{"day":2,"temperature_c":50}],"rules":["de_65_3d"]}""";
        var file = Path.GetTempFileName();
        await File.WriteAllTextAsync(file, Log, Never);
        var answer = await Post("hygiene", Log);

        var printed = await CommandLineOutput("hygiene", "--json", "--input", file);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal(printed, await answer.Content.ReadAsStringAsync(Never));
        File.Delete(file);
    }

    [Fact]
    public async Task Solve_ImpossibleTarget_IsAnAnsweredNo()
    {
        var answer = await Post(
            "solve",
            """{"find":"water","target_moisture_pct_wb":30,"ingredients":[{"name":"wet stuff","mass_kg":10,"moisture_pct_wb":80}]}"""
        );

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        var json = JsonNode.Parse(await answer.Content.ReadAsStringAsync(Never))!;
        Assert.NotEmpty(json["cannot"]!["why"]!.GetValue<string>());
    }

    [Theory]
    [InlineData("mix", "not json", "is not JSON")]
    [InlineData("mix", """{"ingredientz":[]}""", "the nearest is \"ingredients\"")]
    [InlineData("recipe", "{}", "\"have\"")]
    [InlineData("build", "{}", "nothing to build")]
    [InlineData("simulate", "{}", "\"bin\" is missing")]
    [InlineData(
        "simulate",
        """{"bin":{"length_m":1,"width_m":1,"height_m":1},"ingredients":[{"material":"wheat_straw","amount":{"value":1,"unit":"bale"}}],"members":501}""",
        "members: 501 is out of range; 1 to 500"
    )]
    [InlineData(
        "simulate",
        """{"bin":{"length_m":1,"width_m":1,"height_m":1},"ingredients":[{"material":"wheat_straw","amount":{"value":1,"unit":"bale"}}],"weather":{"hourly_csv":"/etc/passwd"}}""",
        "only the command line reads files"
    )]
    [InlineData("hygiene", "{}", "\"process\" is missing")]
    [InlineData("finish", """{"smel":"earthy"}""", "nearest is \"smell\"")]
    [InlineData("materials/show", """{"id":"wheat_strow"}""", "wheat_straw")]
    public async Task Question_Wrong_IsRefusedInOneSentence(
        string command,
        string question,
        string part
    )
    {
        var answer = await Post(command, question);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        var json = JsonNode.Parse(await answer.Content.ReadAsStringAsync(Never))!.AsObject();
        var sentence = json["error"]!.GetValue<string>();
        Assert.Single(json);
        Assert.Contains(part, sentence, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', sentence);
    }

    [Fact]
    public async Task Document_OfTheApi_DescribesEveryCommandWithAnExampleThatWorks()
    {
        var text = await site.Caller().GetStringAsync("/openapi/v1.json", Never);
        using var document = JsonDocument.Parse(text);
        var paths = document.RootElement.GetProperty("paths");

        Assert.StartsWith(
            "3.1",
            document.RootElement.GetProperty("openapi").GetString(),
            StringComparison.Ordinal
        );
        Assert.Equal(
            [
                "/api/build",
                "/api/diagnose",
                "/api/finish",
                "/api/forecast",
                "/api/heaps/{id}/entries",
                "/api/hygiene",
                "/api/materials/guess",
                "/api/materials/list",
                "/api/materials/search",
                "/api/materials/show",
                "/api/mix",
                "/api/recipe",
                "/api/simulate",
                "/api/solve",
            ],
            paths.EnumerateObject().Select(p => p.Name).Order(StringComparer.Ordinal)
        );
        foreach (
            var path in paths
                .EnumerateObject()
                .Where(p => !p.Name.Contains('{', StringComparison.Ordinal))
        )
        {
            var post = path.Value.GetProperty("post");
            var media = post.GetProperty("requestBody")
                .GetProperty("content")
                .GetProperty("application/json");
            Assert.Equal(JsonValueKind.Object, media.GetProperty("schema").ValueKind);
            var answer = await Post(
                path.Name["/api/".Length..],
                media.GetProperty("example").GetRawText()
            );
            Assert.True(
                answer.StatusCode is HttpStatusCode.OK or HttpStatusCode.UnprocessableEntity,
                path.Name + ": " + await answer.Content.ReadAsStringAsync(Never)
            );
            Assert.Equal(
                ["200", "400", "413", "422"],
                post.GetProperty("responses")
                    .EnumerateObject()
                    .Select(r => r.Name)
                    .Order(StringComparer.Ordinal)
            );
        }
    }

    [Fact]
    public async Task Document_OfTheApi_RefersOnlyToWhatItHolds()
    {
        var text = await site.Caller().GetStringAsync("/openapi/v1.json", Never);
        var document = JsonNode.Parse(text)!;
        var known = document["components"]!["schemas"]!
            .AsObject()
            .Select(s => s.Key)
            .ToHashSet(StringComparer.Ordinal);
        var asked = System
            .Text.RegularExpressions.Regex.Matches(
                text,
                "\"#/components/schemas/(?<n>[^\"]+)\"",
                System.Text.RegularExpressions.RegexOptions.ExplicitCapture,
                TimeSpan.FromSeconds(5)
            )
            .Select(m => m.Groups["n"].Value)
            .ToHashSet(StringComparer.Ordinal);

        Assert.Contains("Range", asked);
        Assert.Subset(known, asked);
    }

    [Fact]
    public async Task Health_WithStorageThere_IsHealthy() =>
        Assert.Equal("Healthy", await site.Caller().GetStringAsync("/health", Never));

    private Task<HttpResponseMessage> Post(string command, string question) =>
        site.Caller()
            .PostAsync(
                "/api/" + command,
                new StringContent(question, Encoding.UTF8, "application/json"),
                Never
            );

    private static async Task<string> CommandLineOutput(params string[] args)
    {
        var start = new System.Diagnostics.ProcessStartInfo("dotnet")
        {
            RedirectStandardOutput = true,
            UseShellExecute = false,
        };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "heapwright.dll"));
        foreach (var arg in args)
        {
            start.ArgumentList.Add(arg);
        }

        using var process = System.Diagnostics.Process.Start(start)!;
        var output = await process.StandardOutput.ReadToEndAsync(Never);
        await process.WaitForExitAsync(Never);
        return output;
    }
}
