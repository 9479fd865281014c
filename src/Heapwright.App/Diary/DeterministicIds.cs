using System.Security.Cryptography;
using System.Text;

namespace Heapwright.App.Diary;

/// <summary>Ids made from a name: the same name gives the same id, so that what is read twice counts once (UUID version 5, RFC 9562).</summary>
public static class DeterministicIds
{
    /// <summary>The id of a name within a space of names.</summary>
    /// <param name="space">The space, such as the heap.</param>
    /// <param name="name">The name.</param>
    public static Guid Of(Guid space, string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        var bytes = new byte[16 + Encoding.UTF8.GetByteCount(name)];
        space.TryWriteBytes(bytes, bigEndian: true, out _);
        Encoding.UTF8.GetBytes(name, bytes.AsSpan(16));
        Span<byte> hash = stackalloc byte[20];
#pragma warning disable CA5350 // RFC 9562 names SHA-1 for version 5; nothing here is secret or signed.
        SHA1.HashData(bytes, hash);
#pragma warning restore CA5350
        hash[6] = (byte)((hash[6] & 0x0F) | 0x50);
        hash[8] = (byte)((hash[8] & 0x3F) | 0x80);
        return new Guid(hash[..16], bigEndian: true);
    }
}
