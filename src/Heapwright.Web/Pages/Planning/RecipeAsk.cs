using System.Globalization;
using System.Text.Json.Nodes;
using Heapwright.App.Sites;
using Heapwright.Web.Showing;

namespace Heapwright.Web.Pages.Planning;

/// <summary>What a person asks of a recipe, as it stands in the address.</summary>
public sealed record RecipeAsk
{
    /// <summary>The most lines of things to buy.</summary>
    public const int MostToBuy = 6;

    /// <summary>The aims, in the words of the contract.</summary>
    public static IReadOnlyList<string> Aims { get; } =
    ["use_most", "all_through_heat", "least_work", "least_cost"];

    /// <summary>The chances that can be asked for.</summary>
    public static IReadOnlyList<double> Chances { get; } = [0.5, 0.7, 0.9];

    /// <summary>The bay; null for none.</summary>
    public Bay? Bay { get; init; }

    /// <summary>The aim.</summary>
    public required string Aim { get; init; }

    /// <summary>The chance with which conditions shall hold.</summary>
    public double Chance { get; init; } = 0.5;

    /// <summary>What is left where it is.</summary>
    public required IReadOnlySet<Guid> Left { get; init; }

    /// <summary>What must all go in.</summary>
    public required IReadOnlySet<Guid> Must { get; init; }

    /// <summary>What may be bought or fetched.</summary>
    public required IReadOnlyList<BuyLine> Buy { get; init; }

    /// <summary>What is asked in an address or a form.</summary>
    /// <param name="read">Reads the values of a field.</param>
    /// <param name="contents">What the site has.</param>
    /// <param name="taken">The bays in which heaps stand: unless one is named, it is for the first free one.</param>
    /// <param name="typed">Takes the reasons where something is refused.</param>
    public static RecipeAsk Read(
        Func<string, IReadOnlyList<string>> read,
        SiteContents contents,
        IEnumerable<Guid> taken,
        Posted typed
    )
    {
        ArgumentNullException.ThrowIfNull(read);
        ArgumentNullException.ThrowIfNull(contents);
        var bay = read("bay") is { Count: > 0 } bays ? bays[^1] : null;
        var aim = read("aim") is { Count: > 0 } aims ? aims[^1] : "";
        var chance = read("chance") is { Count: > 0 } chances ? chances[^1] : "";
        return new RecipeAsk
        {
            Bay = bay is null
                ? contents.Bays.FirstOrDefault(b => !taken.Contains(b.Id))
                    ?? contents.Bays.FirstOrDefault()
                : contents.Bays.FirstOrDefault(b =>
                    b.Id.ToString("N", CultureInfo.InvariantCulture) == bay
                ),
            Aim = Aims.Contains(aim, StringComparer.Ordinal) ? aim : Aims[0],
            Chance = Chances.FirstOrDefault(
                c => c.ToString(CultureInfo.InvariantCulture) == chance,
                Chances[0]
            ),
            Left = Ids(read("leave")),
            Must = Ids(read("must")),
            Buy = BuyLine.ReadAll(read, typed),
        };
    }

    /// <summary>The question of <c>recipe</c>.</summary>
    /// <param name="contents">What the site has.</param>
    /// <param name="here">The site.</param>
    public JsonObject Question(SiteContents contents, Here here)
    {
        ArgumentNullException.ThrowIfNull(contents);
        var questions = new SiteQuestions(contents);
        var json = new JsonObject
        {
            ["have"] = new JsonArray([
                .. contents
                    .Stock.Where(s =>
                        s.Amount > 0
                        && !Left.Contains(s.Id)
                        && contents.Material(s.Material) is not null
                    )
                    .Select(s =>
                    {
                        var have = questions.Have(s, Math.Max(0, here.DaysSince(s.Since)));
                        if (Must.Contains(s.Id))
                        {
                            have["must_use"] = true;
                        }

                        return (JsonNode)have;
                    }),
            ]),
            ["can_buy"] = new JsonArray([
                .. Buy.Where(b => b.IsFilled).Select(b => (JsonNode)b.ToJson()),
            ]),
            ["aim"] = Aim,
            ["chance"] = Chance,
            ["containers"] = questions.Containers(),
        };
        if (Bay is not null)
        {
            json["bin"] = SiteQuestions.Bin(Bay);
            if (questions.Earlier(Bay.Id, null, null) is { } earlier)
            {
                json["earlier"] = earlier;
            }
        }

        return json;
    }

    private static HashSet<Guid> Ids(IReadOnlyList<string> texts) =>
        [
            .. texts
                .Select(t => Guid.TryParseExact(t, "N", out var id) ? id : Guid.Empty)
                .Where(id => id != Guid.Empty),
        ];
}
