using System.Globalization;
using System.Text.Json.Nodes;
using Heapwright.App.Changes;
using Heapwright.App.Sites;
using Heapwright.Web.Pages.Mixing;
using Heapwright.Web.Showing;
using Microsoft.AspNetCore.Http.Extensions;

namespace Heapwright.Web.Pages.Watching;

/// <summary>Which heap is watched and what if, as it stands in the address.</summary>
public sealed record WatchAsk
{
    /// <summary>The runs behind each picture.</summary>
    public const int Members = 200;

    private const int MostTurns = 20;

    /// <summary>The covers, in the words of the contract.</summary>
    public static IReadOnlyList<string> Covers { get; } = ["none", "breathable", "lid", "straw"];

    /// <summary>The walls, in the words of the contract.</summary>
    public static IReadOnlyList<string> WallKinds { get; } =
    ["slatted", "timber", "bare", "straw_bale", "none"];

    /// <summary>How well a turn mixes, in the words of the contract.</summary>
    public static IReadOnlyList<string> Hows { get; } = ["poor", "fair", "good"];

    /// <summary>For how many days a heap can be watched.</summary>
    public static IReadOnlyList<int> Spans { get; } = [21, 42, 60];

    /// <summary>The build sheet; null where it is a what-if.</summary>
    public SavedSheet? Sheet { get; init; }

    /// <summary>What would go in, where it is no sheet.</summary>
    public required MixState Mix { get; init; }

    /// <summary>Whether what goes in stands in the address; otherwise it is all that is at hand.</summary>
    public bool IsTyped { get; init; }

    /// <summary>The bay; null for a free heap.</summary>
    public Bay? Bay { get; init; }

    /// <summary>The cover.</summary>
    public required string Cover { get; init; }

    /// <summary>The walls.</summary>
    public required string Walls { get; init; }

    /// <summary>Mean of the air, °C.</summary>
    public double AirC { get; init; } = 15;

    /// <summary>The days on which it is turned, ascending.</summary>
    public IReadOnlyList<double> Turns { get; init; } = [];

    /// <summary>What was typed for the turns.</summary>
    public required string TurnsText { get; init; }

    /// <summary>How well a turn mixes.</summary>
    public required string How { get; init; }

    /// <summary>For how many days.</summary>
    public int Days { get; init; }

    /// <summary>The day looked at.</summary>
    public int Day { get; init; }

    /// <summary>What is asked in an address.</summary>
    /// <param name="read">Reads the values of a field.</param>
    /// <param name="contents">What the site has.</param>
    /// <param name="here">The site.</param>
    /// <param name="sheet">The sheet that the address names, or null.</param>
    /// <param name="typed">Takes the reasons where something is refused.</param>
    public static WatchAsk Read(
        Func<string, IReadOnlyList<string>> read,
        SiteContents contents,
        Here here,
        SavedSheet? sheet,
        Posted typed
    )
    {
        ArgumentNullException.ThrowIfNull(read);
        ArgumentNullException.ThrowIfNull(contents);
        ArgumentNullException.ThrowIfNull(here);
        ArgumentNullException.ThrowIfNull(typed);
        string Last(string name) => read(name) is { Count: > 0 } all ? all[^1].Trim() : "";
        string Word(string name, IReadOnlyList<string> known, string usual) =>
            known.Contains(Last(name), StringComparer.Ordinal) ? Last(name) : usual;
        var mix = MixState.Read(read, contents, here, Posted.Empty());
        var days =
            int.TryParse(
                Last("days"),
                NumberStyles.None,
                CultureInfo.InvariantCulture,
                out var span
            ) && Spans.Contains(span)
                ? span
                : Spans[1];
        var bay = contents.Bays.FirstOrDefault(b =>
            b.Id == (sheet is null ? mix.BayId : sheet.BayId)
        );
        var air = here.Site?.Air is { } monthly
            ? Math.Round(new UsualAir(monthly).MeanOf(here.Today, days), 1)
            : 15.0;
        if (Last("air").Length > 0)
        {
            if (NumberText.Read(Last("air"), "air", here.Show.Culture, out var number) is { } wrong)
            {
                typed.Refuse(wrong);
            }
            else
            {
                air = here.Show.FromTemperature(number);
            }
        }

        var turnsText = read("turns").Count > 0 ? Last("turns") : "7, 14, 21";
        return new WatchAsk
        {
            Sheet = sheet,
            Mix = mix,
            IsTyped = read("m").Count > 0,
            Bay = bay,
            Cover = Word("cover", Covers, "breathable"),
            Walls = Word("walls", WallKinds, "slatted"),
            AirC = air,
            TurnsText = turnsText.Length <= 100 ? turnsText : turnsText[..100],
            Turns = ReadTurns(turnsText, days, typed),
            How = Word("how", Hows, "fair"),
            Days = days,
            Day = int.TryParse(
                Last("day"),
                NumberStyles.None,
                CultureInfo.InvariantCulture,
                out var day
            )
                ? Math.Clamp(day, 0, days)
                : 3,
        };
    }

    /// <summary>The question of <c>simulate</c>.</summary>
    /// <param name="contents">What the site has.</param>
    public JsonObject Question(SiteContents contents)
    {
        var questions = new SiteQuestions(contents);
        var json = Sheet is null ? Mix.Question(questions) : SheetHeap.Question(Sheet, Bay);
        json["bin"] = Bin();
        json["weather"] = new JsonObject { ["air_c"] = AirC };
        json["cover"] = Cover;
        json["walls"] = Walls;
        json["events"] = new JsonArray([
            .. Turns.Select(t => new JsonObject
            {
                ["day"] = t,
                ["do"] = "turn",
                ["thoroughness"] = How,
            }),
        ]);
        json["days"] = Days;
        json["members"] = Members;
        if (questions.Earlier(Bay?.Id, json["bin"], null) is { } earlier)
        {
            json["earlier"] = earlier;
        }

        return json;
    }

    /// <summary>The address of this what-if.</summary>
    /// <param name="show">How quantities are shown.</param>
    /// <param name="day">The day looked at.</param>
    public string Url(Shown show, int day)
    {
        var query = new QueryBuilder();
        foreach (var (name, value) in Heap(show).Concat(WhatIf(show)))
        {
            query.Add(name, value);
        }

        query.Add("day", day.ToString(CultureInfo.InvariantCulture));
        return "/watch" + query.ToQueryString();
    }

    /// <summary>The fields of an address that say which heap it is.</summary>
    /// <param name="show">How quantities are shown.</param>
    public IEnumerable<(string Name, string Value)> Heap(Shown show)
    {
        ArgumentNullException.ThrowIfNull(show);
        if (Sheet is not null)
        {
            return [("sheet", Id(Sheet.Id))];
        }

        var water = show.InVolume(Mix.WaterLitres).ToString("0.###", CultureInfo.InvariantCulture);
        return
        [
            .. IsTyped ? Lines(Mix.Lines) : [],
            ("water_set", water),
            ("bay", Bay is null ? "none" : Id(Bay.Id)),
        ];
    }

    /// <summary>The fields of an address that say what if.</summary>
    /// <param name="show">How quantities are shown.</param>
    public IEnumerable<(string Name, string Value)> WhatIf(Shown show)
    {
        ArgumentNullException.ThrowIfNull(show);
        return
        [
            ("cover", Cover),
            ("walls", Walls),
            ("air", show.InTemperature(AirC).ToString("0.#", show.Culture)),
            ("turns", TurnsText),
            ("how", How),
            ("days", Days.ToString(CultureInfo.InvariantCulture)),
        ];
    }

    /// <summary>The address for watching a mixture.</summary>
    /// <param name="lines">What goes in.</param>
    /// <param name="waterLitres">Water while building, litres.</param>
    /// <param name="bay">The bay; null for none.</param>
    /// <param name="show">How quantities are shown.</param>
    public static string UrlOf(
        IEnumerable<MixLine> lines,
        double waterLitres,
        Guid? bay,
        Shown show
    )
    {
        ArgumentNullException.ThrowIfNull(show);
        var query = new QueryBuilder();
        foreach (var (name, value) in Lines(lines))
        {
            query.Add(name, value);
        }

        query.Add(
            "water_set",
            show.InVolume(waterLitres).ToString("0.###", CultureInfo.InvariantCulture)
        );
        query.Add("bay", bay is { } id ? Id(id) : "none");
        return "/watch" + query.ToQueryString();
    }

    private static IEnumerable<(string, string)> Lines(IEnumerable<MixLine> lines) =>
        lines
            .Where(l => l.Amount > 0)
            .SelectMany(l =>
                new[]
                {
                    ("m", l.Material),
                    ("w", l.Name),
                    ("n", l.Amount.ToString(CultureInfo.InvariantCulture)),
                    ("u", l.Unit),
                    ("d", l.Days.ToString(CultureInfo.InvariantCulture)),
                }
            );

    private static string Id(Guid id) => id.ToString("N", CultureInfo.InvariantCulture);

    // Without a bay it is a free heap, which takes the size of what goes in: the outline here only has room enough.
    private JsonObject Bin()
    {
        if (Bay is not null)
        {
            return SiteQuestions.Bin(Bay);
        }

        return Sheet is not null && JsonObject.Create(Sheet.Answer)?["bin"] is JsonObject built
            ? (JsonObject)built.DeepClone()
            : new JsonObject
            {
                ["shape"] = "cone",
                ["diameter_m"] = 6,
                ["height_m"] = 3,
            };
    }

    private static double[] ReadTurns(string text, int days, Posted typed)
    {
        var parts = text.Split(
            [',', ';', ' '],
            StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries
        );
        var turns = new SortedSet<double>();
        foreach (var part in parts)
        {
            if (
                !int.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out var day)
                || day is < 1 or > 365
                || turns.Count == MostTurns
            )
            {
                typed.Refuse(
                    Refusal.Of(
                        "turns",
                        "sites.turn_days",
                        part.Length <= 20 ? part : part[..20],
                        MostTurns
                    )
                );
                break;
            }

            if (day <= days)
            {
                turns.Add(day);
            }
        }

        return [.. turns];
    }
}
