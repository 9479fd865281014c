using Heapwright.App.Ports;
using Heapwright.Web.Hosting;
using Heapwright.Web.Showing;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Http.Features;

namespace Heapwright.Web.Pages.Settings;

/// <summary>The files of backups, out and in. They hold everything, so only this machine gets them.</summary>
internal static class BackupEndpoints
{
    /// <summary>The largest file that is taken in over a page, in bytes.</summary>
    public const long LargestBytes = 1L << 30;

    private const string Page = "/settings/backup";

    public static void MapBackups(this WebApplication app)
    {
        app.MapGet(Page + "/{name}", Download).ExcludeFromDescription();
        app.MapPost(Page + "/upload", Upload).ExcludeFromDescription();
    }

    private static IResult Download(string name, HttpContext context, IBackups backups)
    {
        if (!WriteGuard.IsThisMachine(context))
        {
            return Results.Text(
                Say.Of("backup.other_machine"),
                statusCode: StatusCodes.Status403Forbidden
            );
        }

        context.Response.Headers.CacheControl = "no-store";
        return backups.Open(name) is { } zip
            ? Results.Stream(zip, "application/zip", name)
            : Results.NotFound();
    }

    // Read here and not by the page, since no other form may be as large.
    private static async Task<IResult> Upload(
        HttpContext context,
        IBackups backups,
        IAntiforgery antiforgery,
        CancellationToken cancel
    )
    {
        context
            .Features.Get<IHttpMaxRequestBodySizeFeature>()
            ?.MaxRequestBodySize = LargestBytes + 65_536;
        context.Features.Set<IFormFeature>(
            new FormFeature(
                context.Request,
                new FormOptions { MultipartBodyLengthLimit = LargestBytes }
            )
        );
        try
        {
            if (!await antiforgery.IsRequestValidAsync(context))
            {
                return Results.BadRequest();
            }

            var form = await context.Request.ReadFormAsync(cancel);
            if (form.Files.GetFile("file") is not { Length: > 0 } file)
            {
                return Results.LocalRedirect(Page + "?wrong=missing");
            }

            await using var stream = file.OpenReadStream();
            await backups.Hold(stream, cancel);
            return Results.LocalRedirect(Page + "?look=" + BackupPage.Uploaded);
        }
        catch (Exception problem) when (problem is InvalidDataException or BadHttpRequestException)
        {
            return Results.LocalRedirect(Page + "?wrong=upload_large");
        }
    }
}
