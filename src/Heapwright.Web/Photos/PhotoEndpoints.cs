using Heapwright.App.Ports;
using Heapwright.Core.Readings;

namespace Heapwright.Web.Photos;

/// <summary>The photos of the diaries, whole and small; each stands under the hash of its bytes and never changes.</summary>
internal static class PhotoEndpoints
{
    private const string Forever = "private, max-age=31536000, immutable";

    public static void MapPhotos(this WebApplication app)
    {
        app.MapGet("/photos/{hash}", Whole).ExcludeFromDescription();
        app.MapGet("/photos/{hash}/small", Small).ExcludeFromDescription();
    }

    private static Task<IResult> Whole(
        string hash,
        IPhotoStore photos,
        HttpContext context,
        CancellationToken cancel
    ) => Send(hash, photos, context, bytes => bytes, cancel);

    private static Task<IResult> Small(
        string hash,
        IPhotoStore photos,
        HttpContext context,
        CancellationToken cancel
    ) =>
        Send(
            hash,
            photos,
            context,
            bytes => PhotoIntake.Draw(bytes, PhotoIntake.SmallSide),
            cancel
        );

    private static async Task<IResult> Send(
        string hash,
        IPhotoStore photos,
        HttpContext context,
        Func<byte[], byte[]?> draw,
        CancellationToken cancel
    )
    {
        if (
            !PhotoEntry.IsHash(hash)
            || await photos.Find(hash, cancel) is not { } photo
            || draw(photo.Bytes.ToArray()) is not { } bytes
        )
        {
            return Results.NotFound();
        }

        context.Response.Headers.CacheControl = Forever;
        return Results.Bytes(bytes, "image/jpeg");
    }
}
