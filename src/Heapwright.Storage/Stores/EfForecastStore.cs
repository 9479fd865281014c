using System.Collections.Immutable;
using System.Text.Json;
using Heapwright.App.Contract;
using Heapwright.App.Outlooks;
using Heapwright.App.Ports;
using Heapwright.Core.Forecasts;
using Heapwright.Core.Quantities;
using Heapwright.Storage.Rows;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Heapwright.Storage.Stores;

/// <summary>Keeps forecasts in a relational database.</summary>
/// <typeparam name="TContext">The context of the database.</typeparam>
/// <param name="contexts">Makes a context for each piece of work.</param>
public sealed class EfForecastStore<TContext>(IDbContextFactory<TContext> contexts) : IForecastStore
    where TContext : SiteContext
{
    private static readonly Duration Renewed = Duration.FromDays(1);

    /// <inheritdoc/>
    public async Task Keep(KeptForecast forecast, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(forecast);
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var last = await context
            .Set<ForecastRow>()
            .Where(f => f.HeapId == forecast.HeapId)
            .OrderByDescending(f => f.Position)
            .FirstOrDefaultAsync(cancel);
        if (
            last is not null
            && last.Entries == forecast.Entries
            && forecast.MadeAt - Shelves.Moment(last.MadeAtUtc) < Renewed
        )
        {
            context.Remove(last);
        }

        context.Add(ToRow(forecast));
        await context.SaveChangesAsync(cancel);
    }

    /// <inheritdoc/>
    public async Task<ImmutableDictionary<Guid, KeptForecast>> Latest(CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var rows = context.Set<ForecastRow>().AsNoTracking();
        var last = await rows.Where(f =>
                rows.Where(o => o.HeapId == f.HeapId).Max(o => o.Position) == f.Position
            )
            .ToListAsync(cancel);
        return last.ToImmutableDictionary(f => f.HeapId, ToForecast);
    }

    /// <inheritdoc/>
    public async Task<ImmutableArray<KeptForecast>> Of(Guid heapId, CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var rows = await context
            .Set<ForecastRow>()
            .AsNoTracking()
            .Where(f => f.HeapId == heapId)
            .OrderBy(f => f.Position)
            .ToListAsync(cancel);
        return [.. rows.Select(ToForecast)];
    }

    private static ForecastRow ToRow(KeptForecast kept) =>
        new()
        {
            Id = kept.Id,
            HeapId = kept.HeapId,
            MadeAtUtc = Shelves.Text(kept.MadeAt),
            Entries = kept.Entries,
            QuestionSha256 = kept.QuestionHash,
            Engine = kept.Engine,
            Data = kept.Data,
            FromDay = kept.FromDay,
            ReadingsUsed = kept.ReadingsUsed,
            StepJson = JsonSerializer.Serialize(kept.Step),
            ChanceBetter = double.IsFinite(kept.ChanceBetter) ? kept.ChanceBetter : null,
            LatestJson = kept.Latest is { } latest
                ? JsonSerializer.Serialize(
                    (double[])
                        [
                            latest.Day,
                            latest.Expected.Low,
                            latest.Expected.Typical,
                            latest.Expected.High,
                            latest.Celsius,
                        ]
                )
                : null,
            Stale = string.Join(' ', kept.Stale),
            CourseJson = JsonSerializer.Serialize(
                kept.Course.Select(c => (double[])[c.Day, c.P05, c.P25, c.P50, c.P75, c.P95])
            ),
        };

    private static KeptForecast ToForecast(ForecastRow row)
    {
        var latest = row.LatestJson is { } text ? JsonSerializer.Deserialize<double[]>(text) : null;
        return new KeptForecast
        {
            Id = row.Id,
            HeapId = row.HeapId,
            MadeAt = Shelves.Moment(row.MadeAtUtc),
            Entries = row.Entries,
            QuestionHash = row.QuestionSha256,
            Engine = row.Engine,
            Data = row.Data,
            FromDay = row.FromDay,
            ReadingsUsed = row.ReadingsUsed,
            Step = JsonSerializer.Deserialize<AdvisedStep>(row.StepJson)!,
            ChanceBetter = row.ChanceBetter ?? double.NaN,
            Latest = latest is null
                ? null
                : new ExpectedReading(
                    latest[0],
                    Spread.Of(latest[1], latest[2], latest[3]),
                    latest[4]
                ),
            Stale =
            [
                .. row
                    .Stale.Split(' ', StringSplitOptions.RemoveEmptyEntries)
                    .Select(Enum.Parse<StaleReason>),
            ],
            Course =
            [
                .. JsonSerializer
                    .Deserialize<double[][]>(row.CourseJson)!
                    .Select(c => new CourseDay(c[0], c[1], c[2], c[3], c[4], c[5])),
            ],
        };
    }
}
