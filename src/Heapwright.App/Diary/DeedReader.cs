using System.Globalization;
using Heapwright.App.Contract;
using Heapwright.App.Library;
using Heapwright.Core.Readings;
using Heapwright.Core.Readings.Deeds;
using Heapwright.Core.Simulation;

namespace Heapwright.App.Diary;

/// <summary>Reads what was done to a heap, in the words of <c>simulate</c> where it has them.</summary>
internal static class DeedReader
{
    private static readonly Dictionary<string, string[]> FieldsOf = new(StringComparer.Ordinal)
    {
        ["built"] = ["ingredients"],
        ["turn"] = ["thoroughness", "part"],
        ["water"] = ["l"],
        ["add"] = ["ingredients"],
        ["cover"] = ["kind"],
        ["rain"] = ["mm"],
        ["split"] = ["share_pct", "other_heap"],
        ["merge"] = ["other_heap"],
        ["move"] = ["bay"],
        ["spread"] = ["bed", "l"],
        ["test"] = ["test", "values"],
        ["close"] = [],
    };

    /// <summary>Its fields.</summary>
    public static string[] Fields { get; } =
    ["do", .. FieldsOf.Values.SelectMany(f => f).Distinct(StringComparer.Ordinal)];

    /// <summary>What was done.</summary>
    /// <param name="fields">The fields of the entry.</param>
    /// <param name="kept">Whether it is read as it was kept; what is kept was checked when it came.</param>
    /// <exception cref="InputProblem">Something is missing, out of range or does not belong to it.</exception>
    public static HeapDeed Read(InputFields fields, bool kept)
    {
        var deed = fields.Needed("do").Choice([.. EntryWords.Deeds]);
        fields.OnlyOf(deed, FieldsOf[deed], Fields.Skip(1));
        return deed switch
        {
            "built" => new BuiltDeed
            {
                Loads = fields["ingredients"] is { } loads
                    ? [.. loads.Items(0, EntryLimits.MostIngredients).Select(Stuff)]
                    : [],
            },
            "turn" => new TurnedDeed(
                (Thoroughness)Word(fields["thoroughness"], EntryWords.Hows, "fair"),
                (TurnedPart)Word(fields["part"], EntryWords.Parts, "all")
            ),
            "water" => new WateredDeed
            {
                Litres = fields.Needed("l").Number(0, EntryLimits.MostLitres),
            },
            "add" => new AddedDeed
            {
                Ingredients =
                [
                    .. fields
                        .Needed("ingredients")
                        .Items(1, EntryLimits.MostIngredients)
                        .Select(Stuff),
                ],
            },
            "cover" => new CoveredDeed
            {
                Kind = fields["kind"]?.Choice([.. EntryWords.Covers]) ?? "breathable",
            },
            "rain" => new RainedDeed
            {
                Millimetres = fields.Needed("mm").Number(0, EntryLimits.MostRainMm),
            },
            "split" => new SplitDeed
            {
                SharePct = fields.Needed("share_pct").Number(0.1, 99.9),
                OtherHeap = fields["other_heap"] is { } other ? EntryReader.Id(other) : null,
            },
            "merge" => new MergedDeed(
                fields["other_heap"] is { } merged ? EntryReader.Id(merged) : null
            ),
            "spread" => new SpreadDeed
            {
                Bed = fields.Needed("bed").Text(EntryLimits.LongestBed),
                Litres = fields.Needed("l").Number(0, EntryLimits.MostLitres),
            },
            "test" => HomeTests.Read(fields, kept),
            "move" => new MovedDeed(EntryReader.Id(fields.Needed("bay"))),
            _ => new ClosedDeed(),
        };
    }

    private static AddedStuff Stuff(Input input)
    {
        var fields = input.Fields("material", "name", "amount", "giver", "since");
        var material = fields["material"]?.Text(100) ?? "";
        if (material.Length == 0 && fields["name"] is null)
        {
            throw input.Problem(
                "neither \"material\" nor \"name\" is there; one of them is needed"
            );
        }

        var amount = fields.Needed("amount").Fields("value", "unit");
        return new AddedStuff
        {
            Material = material,
            Name =
                fields["name"]?.Text(100)
                ?? LibraryReader.Library.Find(material)?.Name
                ?? throw fields
                    .Needed("material")
                    .Problem(
                        $"\"{material}\" is not in the library; add \"name\" for stuff of your own"
                    ),
            Value = amount.Needed("value").Number(0, 1_000_000),
            Unit = amount.Needed("unit").Text(60),
            Giver = fields["giver"]?.Text(100) ?? "",
            Since = fields["since"] is { } since ? Date(since) : null,
        };
    }

    private static DateOnly Date(Input input) =>
        DateOnly.TryParseExact(
            input.Text(10),
            EntryJson.DateForm,
            CultureInfo.InvariantCulture,
            DateTimeStyles.None,
            out var date
        )
            ? date
            : throw input.Problem($"\"{input.Text(10)}\" is no date; write it such as 2026-05-02");

    private static int Word(Input? input, IReadOnlyList<string> words, string usual) =>
        EntryWords.Number(words, input?.Choice([.. words]) ?? usual);
}
