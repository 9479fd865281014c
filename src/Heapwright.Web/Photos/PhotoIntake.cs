using System.Security.Cryptography;
using Heapwright.App.Diary;
using SkiaSharp;

namespace Heapwright.Web.Photos;

/// <summary>
/// Takes photos in: drawn anew at a size that shows a heap, which leaves behind the place, the time and the camera that
/// a file may tell of. What is no picture is refused.
/// </summary>
internal static class PhotoIntake
{
    /// <summary>The largest file that is taken.</summary>
    public const int LargestBytes = 16 << 20;

    /// <summary>The longer side of what is kept, in pixels.</summary>
    public const int LongerSide = 1600;

    /// <summary>The longer side of a small picture, in pixels.</summary>
    public const int SmallSide = 320;

    private const int Quality = 85;
    private const long MostPixels = 80_000_000;

    /// <summary>The photo to keep; null where the bytes are no picture that can be read.</summary>
    /// <param name="bytes">The file as it came.</param>
    public static Photo? Take(byte[] bytes)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        return Draw(bytes, LongerSide) is { } jpeg
            ? new Photo(Convert.ToHexStringLower(SHA256.HashData(jpeg)), "image/jpeg", jpeg)
            : null;
    }

    /// <summary>A JPEG of a picture, upright, no side longer than asked; null where it cannot be read.</summary>
    /// <param name="bytes">The picture.</param>
    /// <param name="longerSide">The longest a side may be, in pixels.</param>
    public static byte[]? Draw(byte[] bytes, int longerSide)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        using var data = SKData.CreateCopy(bytes);
        using var codec = SKCodec.Create(data);
        if (
            codec is null
            || codec.EncodedFormat
                is not (
                    SKEncodedImageFormat.Jpeg
                    or SKEncodedImageFormat.Png
                    or SKEncodedImageFormat.Webp
                )
            || (long)codec.Info.Width * codec.Info.Height > MostPixels
        )
        {
            return null;
        }

        using var picture = SKBitmap.Decode(codec);
        if (picture is null)
        {
            return null;
        }

        var origin = codec.EncodedOrigin;
        var lies = origin >= SKEncodedOrigin.LeftTop;
        var (width, height) = lies
            ? (picture.Height, picture.Width)
            : (picture.Width, picture.Height);
        var scale = Math.Min(1f, (float)longerSide / Math.Max(width, height));
        using var surface = SKSurface.Create(
            new SKImageInfo(
                Math.Max(1, (int)MathF.Round(width * scale)),
                Math.Max(1, (int)MathF.Round(height * scale)),
                SKColorType.Rgba8888,
                SKAlphaType.Opaque
            )
        );
        var canvas = surface.Canvas;
        canvas.Clear(SKColors.White);
        canvas.Scale(scale);
        Upright(canvas, origin, width, height);
        using var image = SKImage.FromBitmap(picture);
        canvas.DrawImage(
            image,
            0,
            0,
            new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear)
        );
        using var drawn = surface.Snapshot();
        using var jpeg = drawn.Encode(SKEncodedImageFormat.Jpeg, Quality);
        return jpeg.ToArray();
    }

    // How a camera was held stands in the file as one of eight numbers; what is drawn stands upright without it.
    private static void Upright(SKCanvas canvas, SKEncodedOrigin origin, int width, int height)
    {
        var turn = origin switch
        {
            SKEncodedOrigin.TopRight => new SKMatrix(-1, 0, width, 0, 1, 0, 0, 0, 1),
            SKEncodedOrigin.BottomRight => new SKMatrix(-1, 0, width, 0, -1, height, 0, 0, 1),
            SKEncodedOrigin.BottomLeft => new SKMatrix(1, 0, 0, 0, -1, height, 0, 0, 1),
            SKEncodedOrigin.LeftTop => new SKMatrix(0, 1, 0, 1, 0, 0, 0, 0, 1),
            SKEncodedOrigin.RightTop => new SKMatrix(0, -1, width, 1, 0, 0, 0, 0, 1),
            SKEncodedOrigin.RightBottom => new SKMatrix(0, -1, width, -1, 0, height, 0, 0, 1),
            SKEncodedOrigin.LeftBottom => new SKMatrix(0, 1, 0, -1, 0, height, 0, 0, 1),
            _ => SKMatrix.Identity,
        };
        canvas.Concat(turn);
    }
}
