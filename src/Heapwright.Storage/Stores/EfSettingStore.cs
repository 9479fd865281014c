using Heapwright.App.Ports;
using Heapwright.Storage.Rows;
using Microsoft.EntityFrameworkCore;

namespace Heapwright.Storage.Stores;

/// <summary>Keeps settings of this installation in a relational database.</summary>
/// <typeparam name="TContext">The context of the database.</typeparam>
/// <param name="contexts">Makes a context for each piece of work.</param>
public sealed class EfSettingStore<TContext>(IDbContextFactory<TContext> contexts) : ISettingStore
    where TContext : SiteContext
{
    /// <inheritdoc/>
    public async Task<string?> Find(string name, CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        return await context
            .Set<SettingRow>()
            .Where(s => s.Name == name)
            .Select(s => s.Value)
            .SingleOrDefaultAsync(cancel);
    }

    /// <inheritdoc/>
    public async Task Put(string name, string? value, CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        await using var transaction = await context.Database.BeginTransactionAsync(cancel);
        await context.Set<SettingRow>().Where(s => s.Name == name).ExecuteDeleteAsync(cancel);
        if (value is not null)
        {
            context.Add(new SettingRow { Name = name, Value = value });
            await context.SaveChangesAsync(cancel);
        }

        await transaction.CommitAsync(CancellationToken.None);
    }
}
