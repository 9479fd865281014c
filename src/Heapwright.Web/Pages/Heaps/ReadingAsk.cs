using Heapwright.App.Changes;
using Heapwright.App.Diary;
using Heapwright.App.Sites;
using Heapwright.Core.Materials.Measurements;
using Heapwright.Core.Readings;
using Heapwright.Web.Showing;
using Microsoft.Extensions.Primitives;
using UnitsNet;

namespace Heapwright.Web.Pages.Heaps;

/// <summary>What is tapped beside a heap: a temperature by its tens and units, a squeezed handful, smells, a photo.</summary>
/// <param name="typed">What came with the form.</param>
/// <param name="many">All values of a field that can be ticked more than once.</param>
/// <param name="show">How the site shows quantities.</param>
internal sealed class ReadingAsk(Posted typed, Func<string, StringValues> many, Shown show)
{
    /// <summary>The highest tens of a unit; above it the number is typed.</summary>
    public static int HighestTens(string unit) => unit == "f" ? 170 : 80;

    /// <summary>The tens below zero, and the button for a temperature that was not read.</summary>
    public const string Below = "below";

    /// <inheritdoc cref="Below"/>
    public const string NotRead = "none";

    /// <summary>The smells that are offered, those that matter most first.</summary>
    public static IReadOnlyList<string> Smells { get; } =
    [
        "earthy",
        "none",
        "ammonia",
        "sour",
        "rotten",
        "rotten_egg",
        "smoke",
        "sweet",
        "alcohol",
        "manure",
        "sewage",
    ];

    /// <summary>The entries of one tap on "save"; none, and a refusal, where something does not fit.</summary>
    /// <param name="id">The id that was given where it was made; all entries of the tap are named after it.</param>
    /// <param name="heap">The heap.</param>
    /// <param name="at">When it was.</param>
    /// <param name="received">When it came.</param>
    /// <param name="photo">The photo, if there is one.</param>
    public IReadOnlyList<DiaryEntry> Entries(
        Guid id,
        KeptHeap heap,
        DateTimeOffset at,
        DateTimeOffset received,
        Photo? photo
    )
    {
        var entries = new List<DiaryEntry>();
        var head = new NoteEntry
        {
            Id = id,
            HeapId = heap.Id,
            At = at,
            Zone = heap.Zone,
            ReceivedAt = received,
            Way = EntryWay.Page,
            Text = "-",
        };
        if (Temperature() is { } temperature)
        {
            entries.Add(Reading(head, temperature));
        }

        if (Sign(head) is { IsEmpty: false } sign)
        {
            entries.Add(sign);
        }

        if (photo is not null)
        {
            entries.Add(
                new PhotoEntry
                {
                    Id = DeterministicIds.Of(id, "photo"),
                    HeapId = head.HeapId,
                    At = head.At,
                    Zone = head.Zone,
                    ReceivedAt = head.ReceivedAt,
                    Way = head.Way,
                    ContentHash = photo.ContentHash,
                }
            );
        }

        if (entries.Count == 0)
        {
            typed.Refuse(Refusal.Of("", "readings.nothing_told"));
        }

        return typed.IsRefused ? [] : entries;
    }

    /// <summary>A temperature that must have been typed; null, and a refusal, where it was not or does not fit.</summary>
    /// <param name="head">The heap, the moment and the way; its words do not matter.</param>
    public TemperatureEntry? Typed(NoteEntry head)
    {
        ArgumentNullException.ThrowIfNull(head);
        var number = typed.Number("temperature");
        IsTemperature(number);
        Beside();
        return typed.IsRefused ? null : Reading(head, number);
    }

    private bool InInches => show.Units.Length == "ft";

    private bool InFahrenheit => (typed["unit"] ?? show.Units.Temperature) == "f";

    // What is typed as a number goes before what is tapped.
    private double? Temperature()
    {
        if (typed.NumberOrNone("temperature") is { } number)
        {
            return IsTemperature(number) ? number : null;
        }

        var (tens, units) = (typed["tens"] ?? "", typed["units"] ?? "");
        if (tens is NotRead or "" && units.Length == 0)
        {
            return null;
        }

        var place = Enumerable
            .Range(0, (HighestTens(InFahrenheit ? "f" : "c") / 10) + 1)
            .FirstOrDefault(t => tens == Text(t * 10), -1);
        var unit = Enumerable.Range(0, 10).FirstOrDefault(u => units == Text(u), -1);
        if (tens == NotRead || (place < 0 && tens != Below) || unit < 0)
        {
            typed.Refuse(Refusal.Of("tens", "readings.tens_and_units"));
            return null;
        }

        return tens == Below ? -unit : (place * 10) + unit;
    }

    private bool IsTemperature(double number) =>
        InFahrenheit
            ? Within("temperature", number, -459, 3632)
            : Within("temperature", number, EntryLimits.ColdestC, EntryLimits.HottestC);

    private TemperatureEntry Reading(NoteEntry head, double temperature)
    {
        var (depth, air) = Beside();
        return new TemperatureEntry
        {
            Id = head.Id,
            HeapId = head.HeapId,
            At = head.At,
            Zone = head.Zone,
            ReceivedAt = head.ReceivedAt,
            Way = head.Way,
            Temperature = Celsius(temperature),
            GivenInFahrenheit = InFahrenheit,
            Spot = (ProbeSpot)
                EntryWords.Number(EntryWords.Spots, One("spot", EntryWords.Spots) ?? "core"),
            Depth =
                depth is { } deep && !typed.IsRefused
                    ? Length.FromCentimeters(
                        InInches ? Math.Round(Length.FromInches(deep).Centimeters, 6) : deep
                    )
                    : null,
            Air = air is { } outside && !typed.IsRefused ? Celsius(outside) : null,
        };
    }

    // How deep the tip stood and the air beside the heap, as typed; what does not fit is refused.
    private (double? Depth, double? Air) Beside()
    {
        var (depth, air) = (typed.NumberOrNone("depth"), typed.NumberOrNone("air"));
        Within("depth", depth ?? 0, 0, InInches ? 196 : EntryLimits.DeepestCm);
        Within("air", air ?? 0, InFahrenheit ? -148 : -100, InFahrenheit ? 212 : 100);
        return (depth, air);
    }

    private SignEntry Sign(NoteEntry head)
    {
        var squeeze = One("squeeze", EntryWords.Squeezes);
        var place = One("place", EntryWords.Places) ?? "core";
        return new SignEntry
        {
            Id = DeterministicIds.Of(head.Id, "sign"),
            HeapId = head.HeapId,
            At = head.At,
            Zone = head.Zone,
            ReceivedAt = head.ReceivedAt,
            Way = head.Way,
            Squeeze = squeeze is null
                ? []
                :
                [
                    (
                        (SignPlace)EntryWords.Number(EntryWords.Places, place),
                        (SqueezeWord)EntryWords.Number(EntryWords.Squeezes, squeeze)
                    ),
                ],
            Smell =
            [
                .. many("smell")
                    .OfType<string>()
                    .Where(w => SignWords.Smell.Contains(w, StringComparer.Ordinal))
                    .Distinct(StringComparer.Ordinal),
            ],
        };
    }

    private string? One(string field, IReadOnlyList<string> words) =>
        typed[field] is { } word && words.Contains(word, StringComparer.Ordinal) ? word : null;

    private Temperature Celsius(double value) =>
        InFahrenheit
            ? EntryReader.FromFahrenheit(value)
            : UnitsNet.Temperature.FromDegreesCelsius(value);

    private bool Within(string field, double value, double lowest, double highest)
    {
        if (value >= lowest && value <= highest)
        {
            return true;
        }

        typed.Refuse(Refusal.Of(field, "sites.number_range", value, lowest, highest));
        return false;
    }

    private static string Text(int number) =>
        number.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
