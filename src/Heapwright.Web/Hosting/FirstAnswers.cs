using System.Text;
using Heapwright.App.Contract;

namespace Heapwright.Web.Hosting;

/// <summary>
/// Asks what is asked beside the heap once, as soon as the site answers, so that whoever comes first does not wait for data
/// to be read and code to be made ready.
/// </summary>
/// <param name="life">Tells when the site answers.</param>
internal sealed class FirstAnswers(IHostApplicationLifetime life) : BackgroundService
{
    private static readonly byte[] Signs = Encoding.UTF8.GetBytes(
        """
        {"heap": {"volume_m3": 1, "age_days": 5, "materials": [{"name": "grass"}, {"name": "straw"}]},
         "weather": {"air_c": 12}, "readings": [{"day": 5, "temperature_c": 30}],
         "signs": {"squeeze": {"core": "drips"}, "smell": ["ammonia"], "absent": ["slimy"]}, "worry": ["smell"]}
        """
    );

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var started = new TaskCompletionSource();
        await using var running = life.ApplicationStarted.Register(started.SetResult);
        await started.Task.WaitAsync(stoppingToken);
        // Twice: the second time finds what only starts to be made ready after the first.
        for (var i = 0; i < 2; i++)
        {
            DiagnoseAnswers.Answer(Input.Read(Signs, "start")).Json.ToJsonString();
        }
    }
}
