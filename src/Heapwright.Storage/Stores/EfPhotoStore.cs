using Heapwright.App.Diary;
using Heapwright.App.Ports;
using Heapwright.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace Heapwright.Storage.Stores;

/// <summary>Keeps images in a relational database.</summary>
/// <typeparam name="TContext">The context of the database.</typeparam>
/// <param name="contexts">Makes a context for each piece of work.</param>
public sealed class EfPhotoStore<TContext>(IDbContextFactory<TContext> contexts) : IPhotoStore
    where TContext : SiteContext
{
    /// <inheritdoc/>
    public async Task Keep(Photo photo, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(photo);
        await using var context = await contexts.CreateDbContextAsync(cancel);
        await using var transaction = await context.Database.BeginTransactionAsync(cancel);
        if (
            !await context
                .Set<PhotoRow>()
                .AnyAsync(p => p.ContentSha256 == photo.ContentHash, cancel)
        )
        {
            context.Add(
                new PhotoRow
                {
                    ContentSha256 = photo.ContentHash,
                    MediaType = photo.MediaType,
                    Content = photo.Bytes.ToArray(),
                }
            );
            await context.SaveChangesAsync(cancel);
        }

        await transaction.CommitAsync(CancellationToken.None);
    }

    /// <inheritdoc/>
    public async Task<Photo?> Find(string contentHash, CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var row = await context
            .Set<PhotoRow>()
            .AsNoTracking()
            .SingleOrDefaultAsync(p => p.ContentSha256 == contentHash, cancel);
        return row is null ? null : new Photo(row.ContentSha256, row.MediaType, row.Content);
    }

    /// <inheritdoc/>
    public async Task<bool> Has(string contentHash, CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        return await context.Set<PhotoRow>().AnyAsync(p => p.ContentSha256 == contentHash, cancel);
    }
}
