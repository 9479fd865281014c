using System.Security.Cryptography;

namespace Heapwright.Web.Offline;

/// <summary>The short code of a bay or heap, as a label carries it: no vowels, no figures that look like letters.</summary>
internal static class LabelCode
{
    private const string Signs = "BCDFGHJKMNPQRSTVWXZ23456789";
    private const int Length = 6;

    /// <summary>The code of a thing; always the same one.</summary>
    /// <param name="id">The thing.</param>
    public static string Of(Guid id)
    {
        var hash = SHA256.HashData(id.ToByteArray(bigEndian: true));
        return string.Concat(
            Enumerable.Range(0, Length).Select(i => Signs[hash[i] % Signs.Length])
        );
    }
}
