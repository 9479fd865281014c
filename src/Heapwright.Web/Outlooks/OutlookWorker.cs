using Heapwright.App.Outlooks;

namespace Heapwright.Web.Outlooks;

/// <summary>Keeps the forecasts up to date while nobody looks, so that the yard has them at once.</summary>
/// <param name="keep">Makes and keeps them.</param>
/// <param name="clock">The clock.</param>
/// <param name="log">Where faults are told.</param>
internal sealed partial class OutlookWorker(
    KeepForecasts keep,
    TimeProvider clock,
    ILogger<OutlookWorker> log
) : BackgroundService
{
    private static readonly TimeSpan Between = TimeSpan.FromSeconds(8);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                await Task.Delay(Between, clock, stoppingToken);
                await keep.Refresh(stoppingToken);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception problem) when (problem is not OperationCanceledException)
            {
                // A full disk, or a file that is locked: what is missing is made the next time, and the site goes on.
                LogFault(problem.Message);
            }
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "forecasts could not be kept: {Why}")]
    private partial void LogFault(string why);
}
