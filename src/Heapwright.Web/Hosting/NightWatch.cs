using Heapwright.App.Backups;
using Heapwright.App.Texts;
using Heapwright.Web.Mail;

namespace Heapwright.Web.Hosting;

/// <summary>Looks every few minutes whether something is due that is done once a day.</summary>
internal sealed partial class NightWatch(
    NightlyBackup nightly,
    DailyMail mail,
    TimeProvider clock,
    ILogger<NightWatch> log
) : BackgroundService
{
    private static readonly TimeSpan Between = TimeSpan.FromMinutes(10);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                await Backup(stoppingToken);
                await Mail(stoppingToken);
                await Task.Delay(Between, clock, stoppingToken);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                break;
            }
        }
    }

    private async Task Backup(CancellationToken stop)
    {
        try
        {
            var made = await nightly.IfDue(stop);
            if (made?.Refusal is { } refusal)
            {
                LogFailed(Words.Of(refusal.Why));
            }
            else if (made?.Backup is { } backup)
            {
                LogMade(backup.Name);
            }
        }
#pragma warning disable CA1031 // The pages go on whatever becomes of the night's work; it is tried again.
        catch (Exception problem) when (problem is not OperationCanceledException)
#pragma warning restore CA1031
        {
            LogFault(problem);
        }
    }

    private async Task Mail(CancellationToken stop)
    {
        try
        {
            if (await mail.IfDue(stop) is false)
            {
                LogMailFailed();
            }
        }
#pragma warning disable CA1031 // As above.
        catch (Exception problem) when (problem is not OperationCanceledException)
#pragma warning restore CA1031
        {
            LogMailFault(problem);
        }
    }

    [LoggerMessage(
        Level = LogLevel.Warning,
        Message = "The mail of the day was not sent; Settings, Mail says why"
    )]
    private partial void LogMailFailed();

    [LoggerMessage(Level = LogLevel.Error, Message = "The mail of the day was not sent")]
    private partial void LogMailFault(Exception problem);

    [LoggerMessage(Level = LogLevel.Information, Message = "The backup {Name} was made")]
    private partial void LogMade(string name);

    [LoggerMessage(Level = LogLevel.Warning, Message = "No backup was made: {Reason}")]
    private partial void LogFailed(string reason);

    [LoggerMessage(Level = LogLevel.Error, Message = "No backup was made")]
    private partial void LogFault(Exception problem);
}
