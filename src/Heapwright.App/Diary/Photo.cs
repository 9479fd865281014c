namespace Heapwright.App.Diary;

/// <summary>The image of a photo.</summary>
/// <param name="ContentHash">The SHA-256 of the bytes, in small hexadecimal digits.</param>
/// <param name="MediaType">image/jpeg, image/png or image/webp.</param>
/// <param name="Bytes">The bytes.</param>
public sealed record Photo(string ContentHash, string MediaType, ReadOnlyMemory<byte> Bytes);
