using System.Reflection;
using System.Security.Cryptography;
using System.Text;
using Heapwright.App.Diary;
using Heapwright.App.Sites;
using Heapwright.Web.Hosting;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.FileProviders;

namespace Heapwright.Web.Offline;

/// <summary>What a phone needs to work without signal: the worker, the list of what it keeps, and where labels lead.</summary>
internal static class OfflineEndpoints
{
    /// <summary>The heaps whose reading pages are kept ahead of need: so many of the newest.</summary>
    public const int MostHeaps = 40;

    private static readonly string[] Parts = [FirstStyle.File, "heap.js", "icon.svg"];

    public static void MapOffline(this WebApplication app)
    {
        var worker = $"const build = '{Build(app.Environment.WebRootFileProvider)}';\n" + Worker();
        app.MapGet(
                "/sw.js",
                (HttpContext context) =>
                {
                    // A worker that is kept too long would keep old pages with it.
                    context.Response.Headers.CacheControl = "no-cache";
                    return Results.Text(worker, "text/javascript", Encoding.UTF8);
                }
            )
            .ExcludeFromDescription();
        app.MapGet("/offline.json", Listed).ExcludeFromDescription();
        app.MapGet(
                "/b/{code}",
                async (string code, DiaryDesk desk, CancellationToken cancel) =>
                    Results.LocalRedirect((await LabelTargets.Read(desk, cancel)).Page(code))
            )
            .ExcludeFromDescription();
    }

    private static async Task<IResult> Listed(
        DiaryDesk desk,
        EndpointDataSource endpoints,
        HttpContext context,
        CancellationToken cancel
    )
    {
        var assets = endpoints
            .Endpoints.Select(e => e.Metadata.GetMetadata<ResourceAssetCollection>())
            .FirstOrDefault(a => a is not null);
        var targets = await LabelTargets.Read(desk, cancel);
        context.Response.Headers.CacheControl = "no-cache";
        Cultures.TellLanguage(context.Response);
        return Results.Json(
            new
            {
                shell = Parts
                    .Select(p => "/" + (assets?[p] ?? p))
                    .Concat([Cultures.Manifest, "/icon-192.png", "/outbox", "/reading"]),
                pages = targets
                    .Heaps.Take(MostHeaps)
                    .Select(h => LabelTargets.PageOf(h.Heap))
                    .Concat(["/", "/round", "/heaps", "/outbox", "/reading"]),
                labels = targets
                    .All()
                    .DistinctBy(t => t.Code)
                    .ToDictionary(t => t.Code, t => t.Page),
            }
        );
    }

    // Whatever is changed in the program or in its files gives another build.
    private static string Build(IFileProvider files)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (
            var assembly in new[]
            {
                typeof(LabelCode).Assembly,
                typeof(Site).Assembly,
                typeof(Core.Readings.DiaryEntry).Assembly,
            }
        )
        {
            hash.AppendData(assembly.ManifestModule.ModuleVersionId.ToByteArray());
        }

        foreach (
            var file in files
                .GetDirectoryContents("")
                .Where(f => !f.IsDirectory)
                .OrderBy(f => f.Name, StringComparer.Ordinal)
        )
        {
            using var stream = file.CreateReadStream();
            hash.AppendData(SHA256.HashData(stream));
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset())[..16];
    }

    private static string Worker()
    {
        using var stream = Assembly
            .GetExecutingAssembly()
            .GetManifestResourceStream("offline/sw.js")!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
