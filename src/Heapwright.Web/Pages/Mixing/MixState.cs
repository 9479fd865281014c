using System.Globalization;
using System.Text.Json.Nodes;
using Heapwright.App.Changes;
using Heapwright.App.Sites;
using Heapwright.Web.Showing;

namespace Heapwright.Web.Pages.Mixing;

/// <summary>A what-if: what would go in and how much, as it stands in the address. Back undoes, a link shares it.</summary>
public sealed record MixState
{
    /// <summary>The most lines that are read from an address.</summary>
    public const int MostLines = 40;

    private const double Most = 100_000;

    /// <summary>What would go in.</summary>
    public IReadOnlyList<MixLine> Lines { get; init; } = [];

    /// <summary>Water to add, litres.</summary>
    public double WaterLitres { get; init; }

    /// <summary>What was typed for the water and was refused; null where it was read.</summary>
    public string? WaterRefused { get; init; }

    /// <summary>The bay it would be built in; null for none.</summary>
    public Guid? BayId { get; init; }

    /// <summary>Whether there is anything in it.</summary>
    public bool HasAny => Lines.Any(l => l.Amount > 0);

    /// <summary>The what-if of an address; what is at hand where the address says nothing.</summary>
    /// <param name="query">The query, or a form of the same fields.</param>
    /// <param name="contents">What the site has.</param>
    /// <param name="here">The site.</param>
    /// <param name="faults">Takes the reasons where something is refused.</param>
    public static MixState Read(
        Func<string, IReadOnlyList<string>> query,
        SiteContents contents,
        Here here,
        Posted faults
    )
    {
        ArgumentNullException.ThrowIfNull(query);
        ArgumentNullException.ThrowIfNull(contents);
        ArgumentNullException.ThrowIfNull(here);
        ArgumentNullException.ThrowIfNull(faults);
        var set = Set(query);
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
                var text = set.Place == lines.Count ? set.Amount : At(query("n"), i);
                var amount = Checked(text, AmountField(lines.Count), here, faults);
                lines.Add(
                    new MixLine(
                        keys[i],
                        name.Length is > 0 and <= 100 ? name : material.Name,
                        amount ?? 0,
                        unit,
                        (int)Number(At(query("d"), i))
                    )
                    {
                        Refused = amount is null ? Short(text) : null,
                    }
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
            if (set.Place < lines.Count && set.Place >= 0)
            {
                lines[set.Place] = lines[set.Place] with { Amount = Number(set.Amount) };
            }
        }

        return Changed(query, contents, lines, here, faults);
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

    /// <summary>The name under which the amount of a line is refused.</summary>
    /// <param name="place">The place of the line.</param>
    public static string AmountField(int place) =>
        string.Create(CultureInfo.InvariantCulture, $"n{place}");

    // Buttons carry the resulting value, so that a page loaded again or gone back to does not count again.
    private static (int Place, string Amount) Set(Func<string, IReadOnlyList<string>> query)
    {
        var set = (query("set") is { Count: > 0 } sets ? sets[^1] : "").Split(' ');
        return
            set.Length == 2
            && int.TryParse(set[0], NumberStyles.None, CultureInfo.InvariantCulture, out var place)
            ? (place, set[1])
            : (-1, "");
    }

    private static MixState Changed(
        Func<string, IReadOnlyList<string>> query,
        SiteContents contents,
        List<MixLine> lines,
        Here here,
        Posted faults
    )
    {
        if (query("add") is { Count: > 0 } adds && contents.Material(adds[^1]) is { } added)
        {
            lines.Add(new MixLine(adds[^1], added.Name, 1, "wheelbarrow", 0));
        }

        var (text, water) = Water(query, here, faults);

        var bay = query("bay") is { Count: > 0 } bays ? bays[^1] : null;
        return new MixState
        {
            Lines = lines,
            WaterLitres = here.Show.FromVolume(water ?? 0),
            WaterRefused = water is null ? Short(text) : null,
            BayId =
                bay is null ? contents.Bays.FirstOrDefault()?.Id
                : Guid.TryParseExact(bay, "N", out var id) ? id
                : null,
        };
    }

    // The buttons put their value in the place of what is typed. An empty field is no water.
    private static (string Text, double? Value) Water(
        Func<string, IReadOnlyList<string>> query,
        Here here,
        Posted faults
    )
    {
        if (query("water_set") is { Count: > 0 } sets)
        {
            return (sets[^1], Checked(sets[^1], "water", here, faults));
        }

        var text = query("water") is { Count: > 0 } waters ? waters[^1].Trim() : "";
        if (text.Length == 0)
        {
            return (text, 0);
        }

        if (NumberText.Read(text, "water", here.Show.Culture, out var read) is { } unread)
        {
            faults.Refuse(unread);
            return (text, null);
        }

        return (text, Within(read, "water", faults));
    }

    // A number as an address has it; null where it was refused. Where nothing stands it is 0.
    private static double? Checked(string text, string field, Here here, Posted faults)
    {
        if (text.Length == 0)
        {
            return 0;
        }

        if (
            !IsNumber(text, out var value)
            && NumberText.Read(text, field, here.Show.Culture, out value) is { } unread
        )
        {
            faults.Refuse(unread);
            return null;
        }

        return Within(value, field, faults);
    }

    private static double? Within(double value, string field, Posted faults)
    {
        if (value is >= 0 and <= Most)
        {
            return value;
        }

        faults.Refuse(Refusal.Of(field, "sites.number_range", value, 0, Most));
        return null;
    }

    private static string Short(string text) => text.Length <= 30 ? text : text[..30];

    private static string At(IReadOnlyList<string> values, int place) =>
        place < values.Count ? values[place] : "";

    private static double Number(string text) =>
        IsNumber(text, out var value) ? Math.Clamp(value, 0, Most) : 0;

    private static bool IsNumber(string text, out double value) =>
        double.TryParse(
            text,
            NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture,
            out value
        );
}
