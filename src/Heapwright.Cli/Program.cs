using System.Globalization;
using Heapwright.App.Texts;
using Heapwright.Cli;
using Heapwright.Cli.Commands;
#if !WITHOUT_STORAGE
using Heapwright.App.Changes;
using Heapwright.App.Diary;
using Heapwright.App.Ports;
using Heapwright.Storage.Sqlite;
using Microsoft.Extensions.DependencyInjection;
#endif

// Whatever the machine's language, the same question gives the same bytes.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
Languages.StartInEnglish();
#if WITHOUT_STORAGE
return CommandLine.Run(args, CommandTable.All, new ProcessTerminal());
#else
return CommandLine.Run(
    args,
    [.. CommandTable.All, .. DiaryCommands.Over(Desk), .. BackupCommands.Over(Backups)],
    new ProcessTerminal()
);

// Only a command that needs it opens the storage; the others must not wait for it.
static IBackups Backups(string folder) => Storage(folder).GetRequiredService<IBackups>();

static ServiceProvider Storage(string folder)
{
    Directory.CreateDirectory(folder);
    var services = new ServiceCollection()
        .AddSingleton(TimeProvider.System)
        .AddSqliteStorage(folder)
        .AddSingleton<SiteRecorder>()
        .BuildServiceProvider();
    services
        .GetRequiredService<SqliteFile>()
        .BringUpToDate(CancellationToken.None)
        .GetAwaiter()
        .GetResult();
    return services;
}

static DiaryDesk Desk(string folder)
{
    var services = Storage(folder);
    return DiaryDesk.Over(
        services.GetRequiredService<SiteRecorder>(),
        services.GetRequiredService<IDiaryStore>(),
        services.GetRequiredService<IPhotoStore>(),
        services.GetRequiredService<IDeviceStore>(),
        new InProcessGate()
    );
}
#endif
