using System.Security.Cryptography;
using System.Text;

namespace Heapwright.App.Links;

/// <summary>Tokens that nobody can guess. They are shown once; what is kept is a hash, which tells only whether one is right.</summary>
public static class SecretToken
{
    /// <summary>The longest text that is held against a hash.</summary>
    public const int Longest = 100;

    private const int Bytes = 32;

    /// <summary>A new token.</summary>
    /// <param name="mark">What it begins with.</param>
    public static string New(string mark) =>
        mark
        + Convert
            .ToBase64String(RandomNumberGenerator.GetBytes(Bytes))
            .Replace('+', '-')
            .Replace('/', '_')
            .TrimEnd('=');

    /// <summary>The SHA-256 of a token, in small hexadecimal digits.</summary>
    /// <param name="token">The token.</param>
    public static string Hash(string token) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(token)));
}
