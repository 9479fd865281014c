using System.Globalization;
using System.Text.Json.Nodes;
using Heapwright.App.Diary;
using Heapwright.App.Library;
using Heapwright.App.Texts;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;
using Heapwright.Web.Showing;
using NodaTime;

namespace Heapwright.Web.Pages.Finishing;

/// <summary>The question of <c>finish</c> as it stands in the address: empty fields are not known.</summary>
public static class FinishAsk
{
    /// <summary>The most beds on a page.</summary>
    public const int MostBeds = 6;

    /// <summary>What it may smell of.</summary>
    public static IReadOnlyList<string> Smells => SignWords.Smell;

    /// <summary>What may be seen of it and says how far it has come.</summary>
    public static IReadOnlyList<string> Looks { get; } =
    [
        .. SignWords.See.Where(word =>
            FinishTableReader.Tables.Evidence.Any(r => r.Sign == "see" && r.Found == word)
        ),
    ];

    /// <summary>The crops that are known, one word for each.</summary>
    public static IReadOnlyList<string> Crops =>
        [.. FinishTableReader.Tables.Crops.Select(c => Words.Of("finish.crop_" + c.Id))];

    /// <summary>The question.</summary>
    /// <param name="typed">What was typed; takes what cannot be read.</param>
    /// <param name="query">The query, for fields that may be chosen several times.</param>
    /// <param name="show">The units of the site.</param>
    /// <param name="today">The day.</param>
    public static JsonObject Question(
        Posted typed,
        IQueryCollection query,
        Shown show,
        LocalDate today
    )
    {
        ArgumentNullException.ThrowIfNull(typed);
        ArgumentNullException.ThrowIfNull(query);
        ArgumentNullException.ThrowIfNull(show);
        var question = new JsonObject
        {
            ["today"] = NodaTime.Text.LocalDatePattern.Iso.Format(today),
            ["age_days"] = typed.NumberOrNone("age"),
            ["ec_ds_m"] = typed.NumberOrNone("ec"),
            ["smell"] = Chosen(query, "smell", Smells),
            ["see"] = Chosen(query, "see", Looks),
            ["manure"] = YesNo(typed["manure"]),
            ["herbicide_risk"] = YesNo(typed["risk"]),
            ["shown_hot"] = typed["hot"] == "1",
        };
        foreach (var test in new[] { HomeTest.SelfHeating, HomeTest.Seeds, HomeTest.Beans })
        {
            Add(
                question,
                EntryWords.Of(test),
                [
                    .. TestField
                        .Of(test)
                        .Select(f =>
                            (
                                f.Field,
                                typed.NumberOrNone(f.Name) is { } value
                                    ? f.Value(value, show)
                                    : (double?)null
                            )
                        ),
                ]
            );
        }

        Add(
            question,
            "ash",
            ("before_pct_db", typed.NumberOrNone("ashb")),
            ("after_pct_db", typed.NumberOrNone("asha"))
        );
        Add(question, "start", ("volume_l", Litres(typed, "start", show)));
        Add(question, "end", ("volume_l", Litres(typed, "now", show)));
        AddBeds(question, typed, show);
        return question;
    }

    /// <summary>The fields of a bed: its name, area, depth and crop.</summary>
    /// <param name="number">Which, from 1.</param>
    public static (string Name, string Area, string Depth, string Crop) BedNames(int number)
    {
        var end = number == 1 ? "" : number.ToString(CultureInfo.InvariantCulture);
        return ("bed" + end, "area" + end, "depth" + end, "crop" + end);
    }

    /// <summary>How many beds can be filled in: those that were, and one more.</summary>
    /// <param name="typed">What was typed.</param>
    public static int BedsShown(Posted typed) =>
        Math.Min(
            MostBeds,
            1 + Enumerable.Range(1, MostBeds).LastOrDefault(i => IsFilled(typed, BedNames(i).Area))
        );

    /// <summary>Whether anything is said of a bed.</summary>
    /// <param name="typed">What was typed.</param>
    public static bool HasBed(Posted typed) =>
        Enumerable
            .Range(1, MostBeds)
            .Select(BedNames)
            .Any(n =>
                IsFilled(typed, n.Area) || IsFilled(typed, n.Depth) || IsFilled(typed, n.Crop)
            );

    /// <summary>The unit of an area.</summary>
    /// <param name="show">The units of the site.</param>
    public static string AreaUnit(Shown show)
    {
        ArgumentNullException.ThrowIfNull(show);
        return Say.Of(show.Measures.InInches ? "done.ft2" : "done.m2");
    }

    /// <summary>Puts the beds into a question; a depth alone asks how far all of it goes.</summary>
    /// <param name="question">The question.</param>
    /// <param name="typed">What was typed; takes what cannot be read.</param>
    /// <param name="show">The units of the site.</param>
    public static void AddBeds(JsonObject question, Posted typed, Shown show)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(typed);
        ArgumentNullException.ThrowIfNull(show);
        var side = show.FromLength(1);
        var beds = new JsonArray();
        for (var i = 1; i <= MostBeds; i++)
        {
            var names = BedNames(i);
            var depth = typed.NumberOrNone(names.Depth) * (show.Measures.InInches ? 2.54 : 1);
            if (typed.NumberOrNone(names.Area) is { } area)
            {
                beds.Add(
                    (JsonNode)
                        new JsonObject
                        {
                            ["name"] = typed[names.Name] is { Length: > 0 } name
                                ? name
                                : Say.Of("done.bed_number", i),
                            ["area_m2"] = area * side * side,
                            ["depth_cm"] = depth,
                            ["crop"] = typed[names.Crop] is { Length: > 0 } crop ? crop : null,
                        }
                );
            }
            else if (i == 1)
            {
                Add(question, "apply", ("depth_cm", depth));
            }
        }

        if (beds.Count > 0)
        {
            question["beds"] = beds;
        }
    }

    private static bool IsFilled(Posted typed, string field) => !string.IsNullOrEmpty(typed[field]);

    // Only what is known stands in the question.
    private static void Add(
        JsonObject question,
        string field,
        params (string Name, double? Value)[] values
    )
    {
        if (values.All(v => v.Value is null))
        {
            return;
        }

        var part = new JsonObject();
        foreach (var (name, value) in values)
        {
            part[name] = value;
        }

        question[field] = part;
    }

    private static double? Litres(Posted typed, string field, Shown show) =>
        typed.NumberOrNone(field) is { } value ? show.FromVolume(value) : null;

    private static bool? YesNo(string? word) =>
        word switch
        {
            "yes" => true,
            "no" => false,
            _ => null,
        };

    private static JsonArray Chosen(
        IQueryCollection query,
        string field,
        IReadOnlyList<string> known
    ) => new([.. known.Where(w => query[field].Contains(w)).Select(w => (JsonNode)w)]);
}
