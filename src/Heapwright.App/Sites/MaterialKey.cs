using System.Globalization;

namespace Heapwright.App.Sites;

/// <summary>
/// How a material is named where it may come from the library or be the site's own: the id of the library, or
/// <c>own-</c> and the number under which the site keeps it.
/// </summary>
public static class MaterialKey
{
    private const string OwnPrefix = "own-";

    /// <summary>The key of a material of the site's own.</summary>
    /// <param name="id">Its id.</param>
    public static string Own(Guid id) => OwnPrefix + id.ToString("N", CultureInfo.InvariantCulture);

    /// <summary>The id of a material of the site's own, or null where the key names one of the library.</summary>
    /// <param name="key">The key.</param>
    public static Guid? OwnId(string key) =>
        key.StartsWith(OwnPrefix, StringComparison.Ordinal)
        && Guid.TryParseExact(key.AsSpan(OwnPrefix.Length), "N", out var id)
            ? id
            : null;
}
