using System.Collections.Immutable;
using System.Text.Json;
using Heapwright.App.Changes;
using Heapwright.App.Ports;
using Heapwright.App.Sites;
using Heapwright.Storage.Rows;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Heapwright.Storage.Stores;

/// <summary>Keeps the things of a site in a relational database.</summary>
/// <typeparam name="TContext">The context of the database.</typeparam>
/// <param name="contexts">Makes a context for each piece of work.</param>
public sealed class EfItemStore<TContext>(IDbContextFactory<TContext> contexts) : IItemStore
    where TContext : SiteContext
{
    /// <inheritdoc/>
    public async Task<ImmutableArray<T>> All<T>(CancellationToken cancel)
        where T : Item
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        return await Shelf<T>().All(context, cancel);
    }

    /// <inheritdoc/>
    public async Task<T?> Find<T>(Guid id, CancellationToken cancel)
        where T : Item
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        return await Shelf<T>().Find(context, id, cancel);
    }

    /// <inheritdoc/>
    public async Task<string?> Current(string kind, Guid id, CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        return await Shelves.Of(kind).Current(context, id, cancel);
    }

    /// <inheritdoc/>
    public Task<Act> Write(Act act, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(act);
        return WriteAll([act], cancel);
    }

    /// <inheritdoc/>
    public async Task<Act> WriteAll(ImmutableArray<Act> acts, CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        await using var transaction = await context.Database.BeginTransactionAsync(cancel);
        var numbers = new Dictionary<long, long>();
        var last = acts[^1];
        foreach (var act in acts)
        {
            foreach (var change in act.Changes)
            {
                await Shelves.Of(change.Kind).Apply(context, change, cancel);
            }

            var row = ToRow(
                act with
                {
                    Undoes = act.Undoes is { } undone
                        ? numbers.GetValueOrDefault(undone, undone)
                        : null,
                }
            );
            context.Add(row);
            await context.SaveChangesAsync(cancel);
            context.ChangeTracker.Clear();
            numbers[act.Number] = row.Number;
            last = act with { Number = row.Number };
        }

        await transaction.CommitAsync(cancel);
        return last;
    }

    /// <inheritdoc/>
    public async Task<ImmutableArray<Act>> Record(CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var rows = await Acts(context).OrderBy(a => a.Number).ToListAsync(cancel);
        return [.. rows.Select(ToAct)];
    }

    /// <inheritdoc/>
    public async Task<Act?> FindAct(long number, CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var row = await Acts(context).SingleOrDefaultAsync(a => a.Number == number, cancel);
        return row is null ? null : ToAct(row);
    }

    /// <inheritdoc/>
    public async Task<ImmutableArray<ActInRecord>> Latest(int most, CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var rows = await Acts(context)
            .OrderByDescending(a => a.Number)
            .Take(most)
            .ToListAsync(cancel);
        var numbers = rows.ConvertAll(r => (long?)r.Number);
        var undone = await context
            .Set<ActRow>()
            .Where(a => numbers.Contains(a.UndoesNumber))
            .Select(a => a.UndoesNumber)
            .ToHashSetAsync(cancel);
        // A thing is as an act left it when no later act touched it; the newest change of each thing says so.
        var seen = new Dictionary<(string, Guid), string?>();
        var acts = ImmutableArray.CreateBuilder<ActInRecord>(rows.Count);
        foreach (var row in rows)
        {
            foreach (var change in row.Changes)
            {
                seen.TryAdd((change.ItemKind, change.ItemId), change.AfterJson);
            }

            var stands =
                row.Changes.Count > 0
                && row.Changes.All(c =>
                    string.Equals(
                        seen[(c.ItemKind, c.ItemId)],
                        c.AfterJson,
                        StringComparison.Ordinal
                    )
                );
            acts.Add(new ActInRecord(ToAct(row), stands, undone.Contains(row.Number)));
        }

        return acts.MoveToImmutable();
    }

    /// <inheritdoc/>
    public async Task<Instant?> LastChange(string kind, Guid id, CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var at = await context
            .Set<ActRow>()
            .Where(a => a.Changes.Any(c => c.ItemKind == kind && c.ItemId == id))
            .OrderByDescending(a => a.Number)
            .Select(a => a.AtUtc)
            .FirstOrDefaultAsync(cancel);
        return at is null ? null : Shelves.Moment(at);
    }

    private static Shelf<T> Shelf<T>()
        where T : Item => (Shelf<T>)Shelves.Of(ItemKinds.Of<T>());

    private static IQueryable<ActRow> Acts(SiteContext context) =>
        context
            .Set<ActRow>()
            .AsNoTracking()
            .Include(a => a.Changes.OrderBy(c => c.Place))
            .AsSplitQuery();

    private static ActRow ToRow(Act act) =>
        new()
        {
            AtUtc = Shelves.Text(act.At),
            What = act.What,
            ValuesJson = JsonSerializer.Serialize(act.Values, ItemKinds.Json),
            UndoesNumber = act.Undoes,
            Changes =
            [
                .. act.Changes.Select(
                    (c, i) =>
                        new ChangeRow
                        {
                            Place = i,
                            ItemKind = c.Kind,
                            ItemId = c.ItemId,
                            BeforeJson = c.Before,
                            AfterJson = c.After,
                        }
                ),
            ],
        };

    private static Act ToAct(ActRow row) =>
        new()
        {
            Number = row.Number,
            At = Shelves.Moment(row.AtUtc),
            What = row.What,
            Values = JsonSerializer.Deserialize<ImmutableArray<string>>(
                row.ValuesJson,
                ItemKinds.Json
            ),
            Undoes = row.UndoesNumber,
            Changes =
            [
                .. row.Changes.Select(c => new Change(
                    c.ItemKind,
                    c.ItemId,
                    c.BeforeJson,
                    c.AfterJson
                )),
            ],
        };
}
