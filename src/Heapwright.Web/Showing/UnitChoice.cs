using Heapwright.App.Sites;

namespace Heapwright.Web.Showing;

/// <summary>The measures offered for amounts, the commonest first.</summary>
public static class UnitChoice
{
    private static readonly string[] First =
    [
        "wheelbarrow",
        "bucket",
        "bag",
        "bale",
        "sack",
        "armful",
        "grass_box",
        "caddy",
        "kg",
        "l",
    ];

    /// <summary>The site's own containers, the usual ones, mass and volume; and the one in use if it is none of these.</summary>
    /// <param name="contents">What the site has.</param>
    /// <param name="inUse">The unit in use.</param>
    public static IReadOnlyList<(string Value, string Text)> For(
        SiteContents contents,
        string inUse
    )
    {
        ArgumentNullException.ThrowIfNull(contents);
        return
        [
            .. contents
                .OwnContainers.Select(c => c.Name)
                .Concat(First)
                .Append(inUse)
                .Where(u => contents.Containers.Find(u) is not null)
                .Distinct(StringComparer.Ordinal)
                .Select(u => (u, Shown.Unit(u).TrimStart('×', ' '))),
        ];
    }
}
