using System.Globalization;
using System.Text.Json.Nodes;
using Heapwright.App.Sites;
using Heapwright.Web.Showing;

namespace Heapwright.Web.Pages.Mixing;

/// <summary>A what-if: what would go in and how much, as it stands in the address. Back undoes, a link shares it.</summary>
public sealed record MixState
{
    /// <summary>The most lines that are read from an address.</summary>
    public const int MostLines = 40;

    /// <summary>What would go in.</summary>
    public IReadOnlyList<MixLine> Lines { get; init; } = [];

    /// <summary>Water to add, litres.</summary>
    public double WaterLitres { get; init; }

    /// <summary>The bay it would be built in; null for none.</summary>
    public Guid? BayId { get; init; }

    /// <summary>Whether there is anything in it.</summary>
    public bool HasAny => Lines.Any(l => l.Amount > 0);

    /// <summary>The what-if of an address; what is at hand where the address says nothing.</summary>
    /// <param name="query">The query, or a form of the same fields.</param>
    /// <param name="contents">What the site has.</param>
    /// <param name="here">The site.</param>
    public static MixState Read(
        Func<string, IReadOnlyList<string>> query,
        SiteContents contents,
        Here here
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        ArgumentNullException.ThrowIfNull(contents);
        var keys = query("m");
        var lines = new List<MixLine>();
        for (var i = 0; i < Math.Min(keys.Count, MostLines); i++)
        {
            var unit = At(query("u"), i);
            if (
                contents.Material(keys[i]) is { } material
                && contents.Containers.Find(unit) is not null
            )
            {
                var name = At(query("w"), i);
                lines.Add(
                    new MixLine(
                        keys[i],
                        name.Length is > 0 and <= 100 ? name : material.Name,
                        Number(At(query("n"), i)),
                        unit,
                        (int)Number(At(query("d"), i))
                    )
                );
            }
        }

        if (keys.Count == 0 && query("go").Count == 0)
        {
            lines =
            [
                .. contents
                    .Stock.Where(s => s.Amount > 0 && contents.Material(s.Material) is not null)
                    .Select(s => new MixLine(
                        s.Material,
                        s.Name,
                        s.Amount,
                        s.Unit,
                        Math.Max(0, here.DaysSince(s.Since))
                    )),
            ];
        }

        return Changed(query, contents, lines, here);
    }

    /// <summary>The question of <c>mix</c>.</summary>
    /// <param name="questions">Puts materials into questions.</param>
    public JsonObject Question(SiteQuestions questions)
    {
        ArgumentNullException.ThrowIfNull(questions);
        return new JsonObject
        {
            ["ingredients"] = new JsonArray([
                .. Lines
                    .Where(l => l.Amount > 0)
                    .Select(l =>
                        (JsonNode)questions.Ingredient(l.Material, l.Name, l.Amount, l.Unit, l.Days)
                    ),
            ]),
            ["water_l"] = WaterLitres,
            ["containers"] = questions.Containers(),
        };
    }

    // Buttons carry the resulting value, so that a page loaded again or gone back to does not count again.
    private static MixState Changed(
        Func<string, IReadOnlyList<string>> query,
        SiteContents contents,
        List<MixLine> lines,
        Here here
    )
    {
        var set = (query("set") is { Count: > 0 } sets ? sets[^1] : "").Split(' ');
        if (
            set.Length == 2
            && int.TryParse(set[0], NumberStyles.None, CultureInfo.InvariantCulture, out var place)
            && place < lines.Count
        )
        {
            lines[place] = lines[place] with { Amount = Number(set[1]) };
        }

        if (query("add") is { Count: > 0 } adds && contents.Material(adds[^1]) is { } added)
        {
            lines.Add(new MixLine(adds[^1], added.Name, 1, "wheelbarrow", 0));
        }

        var water =
            query("water") is { Count: > 0 } waters
            && NumberText.Read(waters[^1], "water", here.Show.Culture, out var typed) is null
                ? here.Show.FromVolume(Math.Clamp(typed, 0, 100_000))
                : 0;
        if (query("water_set") is { Count: > 0 } waterSets)
        {
            water = here.Show.FromVolume(Math.Clamp(Number(waterSets[^1]), 0, 100_000));
        }

        var bay = query("bay") is { Count: > 0 } bays ? bays[^1] : null;
        return new MixState
        {
            Lines = lines,
            WaterLitres = water,
            BayId =
                bay is null ? contents.Bays.FirstOrDefault()?.Id
                : Guid.TryParseExact(bay, "N", out var id) ? id
                : null,
        };
    }

    private static string At(IReadOnlyList<string> values, int place) =>
        place < values.Count ? values[place] : "";

    private static double Number(string text) =>
        double.TryParse(
            text,
            NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture,
            out var value
        )
            ? Math.Clamp(value, 0, 100_000)
            : 0;
}
