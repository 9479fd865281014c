using System.Collections.Immutable;
using Heapwright.App.Changes;
using Heapwright.App.Sites;
using Heapwright.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace Heapwright.Storage.Stores;

/// <summary>The table of one kind of thing: how a thing becomes a row and a row a thing.</summary>
internal abstract class Shelf
{
    public abstract Task<string?> Current(SiteContext context, Guid id, CancellationToken cancel);

    public abstract Task Apply(SiteContext context, Change change, CancellationToken cancel);
}

/// <summary>The table of one kind of thing, whatever its row.</summary>
/// <typeparam name="TItem">The thing.</typeparam>
internal abstract class Shelf<TItem> : Shelf
    where TItem : Item
{
    public abstract Task<ImmutableArray<TItem>> All(SiteContext context, CancellationToken cancel);

    public abstract Task<TItem?> Find(SiteContext context, Guid id, CancellationToken cancel);
}

/// <summary>The table of one kind of thing.</summary>
/// <typeparam name="TItem">The thing.</typeparam>
/// <typeparam name="TRow">Its row.</typeparam>
/// <param name="toItem">Makes the thing from a row.</param>
/// <param name="fill">Puts the thing into a row.</param>
internal sealed class Shelf<TItem, TRow>(Func<TRow, TItem> toItem, Action<TItem, TRow> fill)
    : Shelf<TItem>
    where TItem : Item
    where TRow : ItemRow, new()
{
    public override async Task<ImmutableArray<TItem>> All(
        SiteContext context,
        CancellationToken cancel
    )
    {
        var rows = await context
            .Set<TRow>()
            .AsNoTracking()
            .Where(r => !r.IsRemoved)
            .OrderBy(r => r.Position)
            .ToListAsync(cancel);
        return [.. rows.Select(toItem)];
    }

    public override async Task<TItem?> Find(SiteContext context, Guid id, CancellationToken cancel)
    {
        var row = await context
            .Set<TRow>()
            .AsNoTracking()
            .SingleOrDefaultAsync(r => r.Id == id && !r.IsRemoved, cancel);
        return row is null ? null : toItem(row);
    }

    public override async Task<string?> Current(
        SiteContext context,
        Guid id,
        CancellationToken cancel
    ) => await Find(context, id, cancel) is { } item ? ItemKinds.Write(item) : null;

    public override async Task Apply(SiteContext context, Change change, CancellationToken cancel)
    {
        var row = await context
            .Set<TRow>()
            .SingleOrDefaultAsync(r => r.Id == change.ItemId, cancel);
        var now = row is null or { IsRemoved: true } ? null : ItemKinds.Write(toItem(row));
        if (!string.Equals(now, change.Before, StringComparison.Ordinal))
        {
            throw new ConflictException(change.Kind, change.ItemId);
        }

        if (change.After is null)
        {
            if (row is not null)
            {
                row.IsRemoved = true;
            }

            return;
        }

        if (row is null)
        {
            row = new TRow { Id = change.ItemId };
            context.Add(row);
        }

        var item = (TItem)ItemKinds.Read(change.Kind, change.After);
        row.IsSample = item.IsSample;
        row.IsRemoved = false;
        fill(item, row);
    }
}
