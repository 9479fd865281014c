using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Heapwright.App.Diary;
using Heapwright.App.Ports;
using Heapwright.Storage.Rows;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Heapwright.Storage.Stores;

/// <summary>Keeps the diaries in a relational database.</summary>
/// <typeparam name="TContext">The context of the database.</typeparam>
/// <param name="contexts">Makes a context for each piece of work.</param>
public sealed class EfDiaryStore<TContext>(IDbContextFactory<TContext> contexts) : IDiaryStore
    where TContext : SiteContext
{
    /// <inheritdoc/>
    public async Task<ImmutableArray<AppendOutcome>> Append(
        Guid heapId,
        IReadOnlyList<JudgedEntry> entries,
        CancellationToken cancel
    )
    {
        ArgumentNullException.ThrowIfNull(entries);
        await using var context = await contexts.CreateDbContextAsync(cancel);
        context.ChangeTracker.AutoDetectChangesEnabled = false;
        // The transaction takes the lock of the writer at once, so that what is read here is still so when it is written.
        await using var transaction = await context.Database.BeginTransactionAsync(cancel);
        var there = await There(context, entries, cancel);
        var (place, hash) = await Head(context, heapId, cancel);
        var outcomes = ImmutableArray.CreateBuilder<AppendOutcome>(entries.Count);
        foreach (var judged in entries)
        {
            var entry = judged.Entry;
            if (there.TryGetValue(entry.Id, out var before))
            {
                outcomes.Add(
                    new AppendOutcome(
                        entry.Id,
                        EntryJson.SaysJustThis(before, entry)
                        || EntryReader.Recorded(before).Entry.SaysTheSameAs(entry)
                            ? AppendStatus.AlreadyThere
                            : AppendStatus.Refused
                    )
                );
                continue;
            }

            var json = EntryJson.Record(judged);
            hash = HashChain.Link(hash, json);
            place++;
            context.Add(
                new DiaryRow
                {
                    HeapId = heapId,
                    Place = place,
                    EntryId = entry.Id,
                    AtUnixMs = entry.At.ToUnixTimeMilliseconds(),
                    IsCorrection = entry is Core.Readings.CorrectionEntry,
                    RecordJson = json,
                    ChainSha256 = hash,
                }
            );
            there[entry.Id] = json;
            outcomes.Add(new AppendOutcome(entry.Id, AppendStatus.Kept));
        }

        await context.SaveChangesAsync(cancel);
        // From here on it either is on the disk or is not; giving up half-way would leave that open.
        await transaction.CommitAsync(CancellationToken.None);
        return outcomes.MoveToImmutable();
    }

    /// <inheritdoc/>
    public async Task<ImmutableArray<JudgedEntry>> Read(
        Guid heapId,
        Instant? from,
        Instant? to,
        CancellationToken cancel
    )
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var rows = context.Set<DiaryRow>().AsNoTracking().Where(r => r.HeapId == heapId);
        if (from is not null || to is not null)
        {
            var first = from?.ToUnixTimeMilliseconds() ?? long.MinValue;
            var last = to?.ToUnixTimeMilliseconds() ?? long.MaxValue;
            var texts = await rows.Where(r =>
                    !r.IsCorrection && r.AtUnixMs >= first && r.AtUnixMs <= last
                )
                .OrderBy(r => r.Place)
                .Select(r => r.RecordJson)
                .ToListAsync(cancel);
            texts.AddRange(
                await rows.Where(r => r.IsCorrection)
                    .OrderBy(r => r.Place)
                    .Select(r => r.RecordJson)
                    .ToListAsync(cancel)
            );
            return [.. texts.Select(t => EntryReader.Recorded(t))];
        }

        var all = await rows.OrderBy(r => r.Place).Select(r => r.RecordJson).ToListAsync(cancel);
        return [.. all.Select(t => EntryReader.Recorded(t))];
    }

    /// <inheritdoc/>
    public async IAsyncEnumerable<ChainedEntry> Chain(Guid heapId)
    {
        await foreach (var row in Rows(heapId, CancellationToken.None))
        {
            yield return new ChainedEntry(
                row.Place,
                row.EntryId,
                row.HeapId,
                row.AtUnixMs,
                row.RecordJson,
                row.ChainSha256
            );
        }
    }

    /// <inheritdoc/>
    public async Task<JudgedEntry?> Find(Guid entryId, CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var text = await context
            .Set<DiaryRow>()
            .Where(r => r.EntryId == entryId)
            .Select(r => r.RecordJson)
            .SingleOrDefaultAsync(cancel);
        return text is null ? null : EntryReader.Recorded(text);
    }

    /// <inheritdoc/>
    public async Task<ImmutableArray<(Guid HeapId, long Entries)>> Heaps(CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        // Places count from 1 without gaps, so the highest is the number; counting the rows would take far longer.
        var heaps = await context
            .Set<DiaryRow>()
            .GroupBy(r => r.HeapId)
            .Select(g => new { HeapId = g.Key, Entries = g.Max(r => r.Place) })
            .ToListAsync(cancel);
        return [.. heaps.Select(h => (h.HeapId, h.Entries))];
    }

    /// <inheritdoc/>
    public async Task<ImmutableArray<Guid>> EverMoved(CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        return
        [
            .. await context
                .Set<DiaryRow>()
                .Where(r => r.RecordJson.Contains(DiaryRow.Move))
                .Select(r => r.HeapId)
                .Distinct()
                .ToListAsync(cancel),
        ];
    }

    private static async Task<Dictionary<Guid, string>> There(
        SiteContext context,
        IReadOnlyList<JudgedEntry> entries,
        CancellationToken cancel
    )
    {
        var ids = entries.Select(e => e.Entry.Id).Distinct().ToList();
        return await context
            .Set<DiaryRow>()
            .Where(r => ids.Contains(r.EntryId))
            .Select(r => new { r.EntryId, r.RecordJson })
            .ToDictionaryAsync(r => r.EntryId, r => r.RecordJson, cancel);
    }

    private static async Task<(long Place, string Hash)> Head(
        SiteContext context,
        Guid heapId,
        CancellationToken cancel
    ) =>
        await context
            .Set<DiaryRow>()
            .Where(r => r.HeapId == heapId)
            .OrderByDescending(r => r.Place)
            .Select(r => new { r.Place, r.ChainSha256 })
            .FirstOrDefaultAsync(cancel)
            is { } last
            ? (last.Place, last.ChainSha256)
            : (0, HashChain.Start);

    private async IAsyncEnumerable<DiaryRow> Rows(
        Guid heapId,
        [EnumeratorCancellation] CancellationToken cancel
    )
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        await foreach (
            var row in context
                .Set<DiaryRow>()
                .AsNoTracking()
                .Where(r => r.HeapId == heapId)
                .OrderBy(r => r.Place)
                .AsAsyncEnumerable()
                .WithCancellation(cancel)
        )
        {
            yield return row;
        }
    }
}
