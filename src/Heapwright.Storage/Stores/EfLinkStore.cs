using System.Collections.Immutable;
using Heapwright.App.Links;
using Heapwright.App.Ports;
using Heapwright.Storage.Rows;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Heapwright.Storage.Stores;

/// <summary>Keeps secret addresses in a relational database.</summary>
/// <typeparam name="TContext">The context of the database.</typeparam>
/// <param name="contexts">Makes a context for each piece of work.</param>
public sealed class EfLinkStore<TContext>(IDbContextFactory<TContext> contexts) : ILinkStore
    where TContext : SiteContext
{
    private const string Calendar = "calendar";
    private const string Share = "share";

    /// <inheritdoc/>
    public async Task<ImmutableArray<Link>> All(CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var rows = await context
            .Set<LinkRow>()
            .AsNoTracking()
            .OrderBy(l => l.MadeAtUtc)
            .ToListAsync(cancel);
        return [.. rows.Select(ToLink)];
    }

    /// <inheritdoc/>
    public async Task Add(Link link, string tokenHash, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(link);
        await using var context = await contexts.CreateDbContextAsync(cancel);
        context.Add(
            new LinkRow
            {
                Id = link.Id,
                Purpose = link.Purpose == LinkPurpose.Calendar ? Calendar : Share,
                HeapId = link.HeapId,
                TokenSha256 = tokenHash,
                MadeAtUtc = Shelves.Text(link.MadeAt),
                ExpiresAtUtc = link.ExpiresAt is { } end ? Shelves.Text(end) : null,
            }
        );
        await context.SaveChangesAsync(cancel);
    }

    /// <inheritdoc/>
    public async Task<Link?> FindByToken(string tokenHash, CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var row = await context
            .Set<LinkRow>()
            .AsNoTracking()
            .SingleOrDefaultAsync(l => l.TokenSha256 == tokenHash, cancel);
        return row is null ? null : ToLink(row);
    }

    /// <inheritdoc/>
    public async Task<bool> Revoke(Guid id, Instant at, CancellationToken cancel)
    {
        var when = Shelves.Text(at);
        await using var context = await contexts.CreateDbContextAsync(cancel);
        return await context
                .Set<LinkRow>()
                .Where(l => l.Id == id && l.RevokedAtUtc == null)
                .ExecuteUpdateAsync(s => s.SetProperty(l => l.RevokedAtUtc, when), cancel) > 0;
    }

    private static Link ToLink(LinkRow row) =>
        new(
            row.Id,
            row.Purpose == Calendar ? LinkPurpose.Calendar : LinkPurpose.Share,
            row.HeapId,
            Shelves.Moment(row.MadeAtUtc),
            row.ExpiresAtUtc is null ? null : Shelves.Moment(row.ExpiresAtUtc),
            row.RevokedAtUtc is null ? null : Shelves.Moment(row.RevokedAtUtc)
        );
}
