using System.Collections.Immutable;
using System.Globalization;
using Heapwright.App.Diary;
using Heapwright.App.Outlooks;
using Heapwright.App.Ports;
using Heapwright.App.Sites;
using Heapwright.App.Texts;
using Heapwright.Core.Readings.Deeds;
using NodaTime;

namespace Heapwright.App.Coming;

/// <summary>The days to come, the earliest first: the one list from which the yard, the calendar and the mail tell.</summary>
/// <param name="items">Where the things of the site are kept.</param>
/// <param name="diary">Reads the diaries.</param>
/// <param name="follow">Tells what each heap asks next.</param>
public sealed class ComingDays(IItemStore items, ReadDiary diary, FollowHeaps follow)
{
    /// <summary>What is longer ago than this many days is told no more.</summary>
    public const int DaysKept = 30;

    /// <summary>What waits for a day, and what was begun.</summary>
    /// <param name="now">The present.</param>
    /// <param name="zone">The zone of the site.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<ImmutableArray<ComingDay>> From(
        Instant now,
        DateTimeZone zone,
        CancellationToken cancel
    )
    {
        var heaps = await items.All<KeptHeap>(cancel);
        var days = new List<ComingDay>();
        foreach (var heap in heaps)
        {
            if (await diary.Of(heap.Id, null, cancel) is { IsClosed: false } record)
            {
                days.AddRange(Tests(record));
                days.AddRange(Helped(record));
            }
        }

        var today = SiteDays.DayOf(now, zone);
        days.AddRange((await follow.InOrder(cancel)).SelectMany(Step));
        days.AddRange(await Spoiling(cancel));
        days.AddRange(await Begun(heaps, today, cancel));
        return
        [
            .. days.Where(d => d.Last >= today.PlusDays(-DaysKept))
                .OrderBy(d => d.First)
                .ThenBy(d => d.Last)
                .ThenBy(d => d.Kind)
                .ThenBy(d => d.Values[0], StringComparer.Ordinal)
                .ThenBy(d => d.Subject),
        ];
    }

    /// <summary>The day by which something at hand is to be used; null where it keeps or its material is not known.</summary>
    /// <param name="contents">What the site has.</param>
    /// <param name="entry">What is at hand.</param>
    public static LocalDate? SpoilsOn(SiteContents contents, StockEntry entry)
    {
        ArgumentNullException.ThrowIfNull(contents);
        ArgumentNullException.ThrowIfNull(entry);
        return contents.Material(entry.Material)?.SpoilsInDays is { } days
            ? entry.Since.PlusDays((int)Math.Ceiling(days))
            : null;
    }

    private static IEnumerable<ComingDay> Tests(HeapRecord record)
    {
        foreach (var begun in DoneQuestion.Begun(record))
        {
            if (HomeTests.ToRead(begun, record.Kept.TimeZone()) is var (first, last))
            {
                var word = EntryWords.Of(((TestedDeed)begun.Deed).Test);
                yield return new ComingDay(
                    begun.Id,
                    ComingKind.TestToRead,
                    first,
                    last,
                    Instant.FromDateTimeOffset(begun.ReceivedAt),
                    $"{Url(record)}/finish#test-{word}",
                    "coming.test_" + word,
                    [record.Kept.Name]
                );
            }
        }
    }

    private static IEnumerable<ComingDay> Helped(HeapRecord record)
    {
        if (SignsConclusion.Open(record) is { } note)
        {
            var day = SiteDays
                .DayOf(Instant.FromDateTimeOffset(note.At), record.Kept.TimeZone())
                .PlusDays(SignsConclusion.DaysUntilAsked);
            yield return new ComingDay(
                note.Id,
                ComingKind.DidItHelp,
                day,
                day,
                Instant.FromDateTimeOffset(note.ReceivedAt),
                Url(record),
                "coming.helped",
                [record.Kept.Name]
            );
        }
    }

    // Where a heap asks to be kept away from, or to be read first, nothing else is told of it.
    private static IEnumerable<ComingDay> Step(FollowedHeap heap)
    {
        if (
            heap.Step is
            {
                Kind: HeapStepKind.Do or HeapStepKind.Leave,
                Forecast: { Step.IsWaiting: false } forecast
            }
        )
        {
            var kept = heap.Record.Kept;
            var day = SiteDays.DayOf(
                kept.BuiltAt + Duration.FromDays(forecast.Step.OnDay),
                kept.TimeZone()
            );
            yield return new ComingDay(
                kept.Id,
                ComingKind.NextStep,
                day,
                day,
                forecast.MadeAt,
                Url(heap.Record),
                "coming.step_" + forecast.Step.Deed,
                [kept.Name]
            );
        }
    }

    private async Task<List<ComingDay>> Spoiling(CancellationToken cancel)
    {
        var contents = await SiteContents.Read(items, cancel);
        var days = new List<ComingDay>();
        foreach (var entry in contents.Stock.Where(s => s.Amount > 0))
        {
            if (SpoilsOn(contents, entry) is { } day)
            {
                var how = "coming.spoils_" + contents.Material(entry.Material)!.SpoilsHow;
                days.Add(
                    new ComingDay(
                        entry.Id,
                        ComingKind.StuffSpoils,
                        day,
                        day,
                        await Changed(entry, cancel),
                        $"/stock/{Key(entry.Id)}",
                        Words.TryOf(how) is null ? "coming.spoils" : how,
                        [entry.Name]
                    )
                );
            }
        }

        return days;
    }

    private async Task<IEnumerable<ComingDay>> Begun(
        ImmutableArray<KeptHeap> heaps,
        LocalDate today,
        CancellationToken cancel
    )
    {
        var built = heaps.Select(h => h.SheetId).OfType<Guid>().ToHashSet();
        return (await items.All<SavedSheet>(cancel))
            .Where(s => !built.Contains(s.Id))
            .Select(s => (Sheet: s, Layers: Layers(s)))
            .Where(s => s.Sheet.Ticked.Length > 0 && s.Sheet.Ticked.Length < s.Layers)
            .Select(s => new ComingDay(
                s.Sheet.Id,
                ComingKind.HalfBuilt,
                today,
                today,
                s.Sheet.MadeAt,
                $"/sheets/{Key(s.Sheet.Id)}",
                "coming.half_built",
                [
                    s.Sheet.Name,
                    s.Sheet.Ticked.Length.ToString(CultureInfo.InvariantCulture),
                    s.Layers.ToString(CultureInfo.InvariantCulture),
                ]
            ));
    }

    private async Task<Instant> Changed(StockEntry entry, CancellationToken cancel) =>
        await items.LastChange(ItemKinds.Of(entry), entry.Id, cancel)
        ?? entry.Since.AtMidnight().InUtc().ToInstant();

    private static int Layers(SavedSheet sheet) =>
        sheet.Answer.TryGetProperty("layers", out var layers)
        && layers.ValueKind == System.Text.Json.JsonValueKind.Array
            ? layers.GetArrayLength()
            : 0;

    private static string Url(HeapRecord record) => "/heaps/" + Key(record.Kept.Id);

    private static string Key(Guid id) => id.ToString("N", CultureInfo.InvariantCulture);
}
