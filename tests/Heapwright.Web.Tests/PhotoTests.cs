using System.Text;
using Heapwright.Web.Photos;
using SkiaSharp;

namespace Heapwright.Web.Tests;

/// <summary>Photos are drawn anew: smaller, upright, without what their file tells of place and time.</summary>
public sealed class PhotoTests
{
    [Fact]
    public void Take_PhotoLyingOnItsSideWithAPlace_StandsUprightWithoutIt()
    {
        // 6: the camera was held a quarter turn to the left; red is at the left of the file, so at the top of the picture.
        var photo = PhotoIntake.Take(Tagged(Jpeg(2000, 1000), orientation: 6))!;

        using var picture = SKBitmap.Decode(photo.Bytes.ToArray());
        Assert.Equal((800, 1600), (picture.Width, picture.Height));
        Assert.True(picture.GetPixel(400, 100) is { Red: > 200, Blue: < 80 });
        Assert.True(picture.GetPixel(400, 1500) is { Red: < 80, Blue: > 200 });
        var text = Encoding.Latin1.GetString(photo.Bytes.Span);
        Assert.DoesNotContain("Exif", text, StringComparison.Ordinal);
        Assert.DoesNotContain("PLACE", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("<html>not a picture</html>")]
    [InlineData("GIF89a")]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>")]
    public void Take_WhatIsNoPhoto_IsRefused(string text) =>
        Assert.Null(PhotoIntake.Take(Encoding.UTF8.GetBytes(text)));

    [Fact]
    public void Take_SmallPhoto_KeepsItsSizeAndTheSameBytesGiveTheSameHash()
    {
        var bytes = Jpeg(300, 200);

        var photo = PhotoIntake.Take(bytes)!;

        using var picture = SKBitmap.Decode(photo.Bytes.ToArray());
        Assert.Equal((300, 200), (picture.Width, picture.Height));
        Assert.Equal(photo.ContentHash, PhotoIntake.Take(bytes)!.ContentHash);
    }

    // Red on the left, blue on the right.
    private static byte[] Jpeg(int width, int height)
    {
        using var picture = new SKBitmap(width, height);
        using var canvas = new SKCanvas(picture);
        canvas.Clear(SKColors.Blue);
        using var red = new SKPaint { Color = SKColors.Red };
        canvas.DrawRect(0, 0, width / 2f, height, red);
        using var data = picture.Encode(SKEncodedImageFormat.Jpeg, 90);
        return data.ToArray();
    }

    // A head as cameras write it: one entry for how it was held, and a text where a place might stand.
    private static byte[] Tagged(byte[] jpeg, byte orientation)
    {
        byte[] exif =
        [
            .. "Exif\0\0"u8,
            .. "MM\0*\0\0\0\u0008"u8,
            0,
            1,
            0x01,
            0x12,
            0,
            3,
            0,
            0,
            0,
            1,
            0,
            orientation,
            0,
            0,
            0,
            0,
            0,
            0,
            .. "PLACE 51.5N"u8,
        ];
        return
        [
            .. jpeg[..2],
            0xFF,
            0xE1,
            (byte)((exif.Length + 2) >> 8),
            (byte)(exif.Length + 2),
            .. exif,
            .. jpeg[2..],
        ];
    }
}
