using Heapwright.App.Changes;
using Heapwright.App.Diary;
using Heapwright.App.Ports;
using Heapwright.Storage.Sqlite;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;

namespace Heapwright.Storage.Tests;

/// <summary>A data folder of its own for one test, gone afterwards.</summary>
internal sealed class TemporaryStorage : IAsyncDisposable
{
    private readonly ServiceProvider services;

    public TemporaryStorage()
    {
        Folder = Directory.CreateTempSubdirectory("heapwright-test-").FullName;
        services = new ServiceCollection()
            .AddSingleton<TimeProvider>(Clock)
            .AddSqliteStorage(Folder)
            .AddSingleton<SiteRecorder>()
            .AddSingleton<IHeapGate, InProcessGate>()
            .AddSingleton<RecordEntries>()
            .AddSingleton<ReadDiary>()
            .BuildServiceProvider();
    }

    public FakeTimeProvider Clock { get; } =
        new(new DateTimeOffset(2026, 6, 1, 12, 0, 0, TimeSpan.Zero));

    public string Folder { get; }

    public string FileName => Path.Combine(Folder, SqliteStorage.FileName);

    public SqliteFile File => services.GetRequiredService<SqliteFile>();

    public IItemStore Store => services.GetRequiredService<IItemStore>();

    public IDiaryStore Diary => services.GetRequiredService<IDiaryStore>();

    public IDeviceStore Devices => services.GetRequiredService<IDeviceStore>();

    public ILinkStore Links => services.GetRequiredService<ILinkStore>();

    public ISettingStore Settings => services.GetRequiredService<ISettingStore>();

    public IBackups Backups => services.GetRequiredService<IBackups>();
    public IForecastStore Forecasts => services.GetRequiredService<IForecastStore>();

    public IPhotoStore Photos => services.GetRequiredService<IPhotoStore>();

    public RecordEntries Entries => services.GetRequiredService<RecordEntries>();

    public ReadDiary Reader => services.GetRequiredService<ReadDiary>();

    public SiteRecorder Recorder => services.GetRequiredService<SiteRecorder>();

    public static async Task<TemporaryStorage> Ready()
    {
        var storage = new TemporaryStorage();
        await storage.File.BringUpToDate(CancellationToken.None);
        return storage;
    }

    /// <summary>Runs SQL on the file, past everything that stands before it.</summary>
    public async Task<List<string>> Sql(string sql)
    {
        await using var connection = new SqliteConnection(
            new SqliteConnectionStringBuilder { DataSource = FileName, Pooling = false }.ToString()
        );
        await connection.OpenAsync();
        await using var command = connection.CreateCommand();
        command.CommandText = sql;
        var rows = new List<string>();
        await using var reader = await command.ExecuteReaderAsync();
        while (await reader.ReadAsync())
        {
            rows.Add(reader.GetValue(0).ToString() ?? "");
        }

        return rows;
    }

    public async ValueTask DisposeAsync()
    {
        await services.DisposeAsync();
        SqliteConnection.ClearAllPools();
        Directory.Delete(Folder, recursive: true);
    }
}
