namespace Heapwright.Storage.Rows;

/// <summary>The row of an image.</summary>
public sealed class PhotoRow
{
    /// <summary>The hash of its bytes, in hexadecimal digits.</summary>
    public string ContentSha256 { get; set; } = "";

    /// <summary>image/jpeg, image/png or image/webp.</summary>
    public string MediaType { get; set; } = "";

    /// <summary>The bytes.</summary>
#pragma warning disable CA1819 // A row is filled by the mapper.
    public byte[] Content { get; set; } = [];
#pragma warning restore CA1819
}
