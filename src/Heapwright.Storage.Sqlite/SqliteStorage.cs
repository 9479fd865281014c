using Heapwright.App.Ports;
using Heapwright.Storage.Sqlite.Backups;
using Heapwright.Storage.Stores;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace Heapwright.Storage.Sqlite;

/// <summary>Storage in one SQLite file in the data folder.</summary>
public static class SqliteStorage
{
    /// <summary>The name of the file in the data folder.</summary>
    public const string FileName = "heapwright.db";

    /// <summary>The folder beside it that holds the keys with which the web signs.</summary>
    public const string KeysFolder = "keys";

    /// <summary>Adds the stores that keep everything in one file.</summary>
    /// <param name="services">Where to add them.</param>
    /// <param name="folder">The data folder; it must exist.</param>
    public static IServiceCollection AddSqliteStorage(
        this IServiceCollection services,
        string folder
    )
    {
        services.AddDbContextFactory<SqliteSiteContext>(options => Configure(options, folder));
        services.AddSingleton<IItemStore, EfItemStore<SqliteSiteContext>>();
        services.AddSingleton<IDiaryStore, EfDiaryStore<SqliteSiteContext>>();
        services.AddSingleton<IDeviceStore, EfDeviceStore<SqliteSiteContext>>();
        services.AddSingleton<ILinkStore, EfLinkStore<SqliteSiteContext>>();
        services.AddSingleton<ISettingStore, EfSettingStore<SqliteSiteContext>>();
        services.AddSingleton<IForecastStore, EfForecastStore<SqliteSiteContext>>();
        services.AddSingleton<IPhotoStore, EfPhotoStore<SqliteSiteContext>>();
        services.AddSingleton(provider => new SqliteFile(
            folder,
            provider.GetRequiredService<IDbContextFactory<SqliteSiteContext>>(),
            provider.GetRequiredService<TimeProvider>()
        ));
        services.AddSingleton<IBackups>(provider => new SqliteBackups(
            folder,
            provider.GetRequiredService<TimeProvider>()
        ));
        return services;
    }

    internal static void Configure(
        DbContextOptionsBuilder options,
        string folder,
        bool pooled = true
    ) =>
        options
            .UseSqlite(
                new SqliteConnectionStringBuilder
                {
                    DataSource = Path.Combine(folder, FileName),
                    ForeignKeys = true,
                    Pooling = pooled,
                }.ToString()
            )
            .AddInterceptors(new SqlitePragmas());
}
