using System.Security.Cryptography;
using System.Text;

namespace Heapwright.App.Diary;

/// <summary>
/// Chains the entries of a diary: each hash is the SHA-256 over the hash before it (32 bytes, zeros before the first)
/// and the text of the entry in UTF-8. Whoever changes an entry must change every hash after it, and those printed or
/// exported before then disagree.
/// </summary>
public static class HashChain
{
    /// <summary>What stands before the first entry: 64 zeros.</summary>
    public static string Start { get; } = new('0', 64);

    /// <summary>The hash of an entry.</summary>
    /// <param name="previous">The hash before it.</param>
    /// <param name="json">Its text.</param>
    public static string Link(string previous, string json)
    {
        ArgumentNullException.ThrowIfNull(json);
        var text = Encoding.UTF8.GetByteCount(json);
        var bytes = new byte[32 + text];
        Convert.FromHexString(previous, bytes, out _, out _);
        Encoding.UTF8.GetBytes(json, bytes.AsSpan(32));
        return Convert.ToHexStringLower(SHA256.HashData(bytes));
    }
}
