using System.Collections.Concurrent;
using System.Security.Cryptography;
using System.Text;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
using Heapwright.App.Ports;
using Heapwright.App.Sites;
using NodaTime;

namespace Heapwright.App.Outlooks;

/// <summary>
/// Keeps the forecasts of all heaps that are followed up to date: a heap is forecast anew when its diary has more entries,
/// and every few hours, as the present moves on.
/// </summary>
/// <param name="reader">Reads the diaries.</param>
/// <param name="items">Where the things of the site are kept.</param>
/// <param name="forecasts">Where the forecasts are kept.</param>
/// <param name="clock">The clock.</param>
public sealed class KeepForecasts(
    ReadDiary reader,
    IItemStore items,
    IForecastStore forecasts,
    TimeProvider clock
)
{
    private static readonly Duration Renewed = Duration.FromHours(3);

    // What was looked at since the program started: how many entries there were, when, and in which usual air.
    private readonly ConcurrentDictionary<
        Guid,
        (long Entries, Instant At, MonthlyAir? Air)
    > looked = new();

    /// <summary>Forecasts what has no forecast of its present state.</summary>
    /// <param name="cancel">Gives up; what was made by then is kept.</param>
    /// <returns>How many forecasts were made.</returns>
    public async Task<int> Refresh(CancellationToken cancel)
    {
        if (await items.Find<Site>(Site.OnlyId, cancel) is not { } site)
        {
            return 0;
        }

        var made = 0;
        SiteContents? contents = null;
        foreach (var (heap, entries) in await reader.Heaps(cancel))
        {
            var now = clock.Now();
            if (
                looked.TryGetValue(heap.Id, out var before)
                && before.Entries == entries
                && now - before.At < Renewed
                && Equals(before.Air, site.Air)
            )
            {
                continue;
            }

            contents ??= await SiteContents.Read(items, cancel);
            made += await Make(heap.Id, contents, site, now, cancel) ? 1 : 0;
            looked[heap.Id] = (entries, now, site.Air);
        }

        return made;
    }

    private async Task<bool> Make(
        Guid heapId,
        SiteContents contents,
        Site site,
        Instant now,
        CancellationToken cancel
    )
    {
        if (
            await reader.Of(heapId, null, cancel) is not { } record
            || OutlookQuestion.Of(record, contents, now, site.TimeZone()) is not { } question
        )
        {
            return false;
        }

        var text = Encoding.UTF8.GetBytes(question.ToJsonString());
        var hash = Convert.ToHexStringLower(SHA256.HashData(text));
        var last = (await forecasts.Latest(cancel)).GetValueOrDefault(heapId);
        if (last?.QuestionHash == hash && last.Engine == ForecastAnswers.EngineVersion)
        {
            return false;
        }

        try
        {
            var made = ForecastAnswers.Make(
                Input.Read(text, record.Kept.Name),
                SimulateLimits.Web,
                cancellation: cancel
            );
            await forecasts.Keep(
                KeptForecast.Of(made, heapId, record.Entries.Length, hash, now),
                cancel
            );
            return true;
        }
        catch (InputProblem)
        {
            // Its page says what is wrong with it; here there is nothing to keep.
            return false;
        }
    }
}
