using System.Collections.Immutable;
using Heapwright.App.Diary;
using Heapwright.App.Ports;
using Heapwright.Storage.Rows;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace Heapwright.Storage.Stores;

/// <summary>Keeps the devices in a relational database.</summary>
/// <typeparam name="TContext">The context of the database.</typeparam>
/// <param name="contexts">Makes a context for each piece of work.</param>
public sealed class EfDeviceStore<TContext>(IDbContextFactory<TContext> contexts) : IDeviceStore
    where TContext : SiteContext
{
    /// <inheritdoc/>
    public async Task<ImmutableArray<Device>> All(CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var rows = await context
            .Set<DeviceRow>()
            .AsNoTracking()
            .OrderBy(d => d.MadeAtUtc)
            .ToListAsync(cancel);
        return [.. rows.Select(ToDevice)];
    }

    /// <inheritdoc/>
    public async Task Add(Device device, string tokenHash, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(device);
        await using var context = await contexts.CreateDbContextAsync(cancel);
        context.Add(
            new DeviceRow
            {
                Id = device.Id,
                Name = device.Name,
                TokenSha256 = tokenHash,
                MadeAtUtc = Shelves.Text(device.MadeAt),
                Role = KeepDevices.Of(device.Role),
                UntilUtc = device.Until is { } end ? Shelves.Text(end) : null,
            }
        );
        await context.SaveChangesAsync(cancel);
    }

    /// <inheritdoc/>
    public async Task<Device?> FindByToken(string tokenHash, CancellationToken cancel)
    {
        await using var context = await contexts.CreateDbContextAsync(cancel);
        var row = await context
            .Set<DeviceRow>()
            .AsNoTracking()
            .SingleOrDefaultAsync(
                d => d.TokenSha256 == tokenHash && d.RevokedAtUtc == null,
                cancel
            );
        return row is null ? null : ToDevice(row);
    }

    /// <inheritdoc/>
    public async Task<bool> Revoke(Guid id, Instant at, CancellationToken cancel)
    {
        var when = Shelves.Text(at);
        await using var context = await contexts.CreateDbContextAsync(cancel);
        return await context
                .Set<DeviceRow>()
                .Where(d => d.Id == id && d.RevokedAtUtc == null)
                .ExecuteUpdateAsync(s => s.SetProperty(d => d.RevokedAtUtc, when), cancel) > 0;
    }

    private static Device ToDevice(DeviceRow row) =>
        new(
            row.Id,
            row.Name,
            KeepDevices.RoleOf(row.Role),
            Shelves.Moment(row.MadeAtUtc),
            row.UntilUtc is null ? null : Shelves.Moment(row.UntilUtc),
            row.RevokedAtUtc is null ? null : Shelves.Moment(row.RevokedAtUtc)
        );
}
