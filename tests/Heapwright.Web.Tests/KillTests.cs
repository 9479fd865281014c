using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Headers;
using System.Reflection;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Heapwright.App.Changes;
using Heapwright.App.Diary;
using Heapwright.App.Ports;
using Heapwright.Core.Readings;
using Heapwright.Storage.Sqlite;
using Microsoft.Extensions.DependencyInjection;

namespace Heapwright.Web.Tests;

/// <summary>
/// The program is killed at random moments while entries arrive: what was acknowledged is there exactly once, the file is
/// whole, the chain holds. HEAPWRIGHT_KILLS says how often, HEAPWRIGHT_KILL_SECONDS for how long at most; see
/// bench/kill-test/run.
/// </summary>
public sealed partial class KillTests : IDisposable
{
    private const int Senders = 4;
    private static readonly CancellationToken Never = CancellationToken.None;
    private readonly string folder = Directory.CreateTempSubdirectory("heapwright-kill-").FullName;
    private readonly ConcurrentDictionary<Guid, bool> acknowledged = new();
    private readonly ConcurrentQueue<Guid> unanswered = new();
    private readonly Guid heapId = Guid.CreateVersion7();
    private string token = "";

    [Fact]
    public async Task Killed_WhileEntriesArrive_NothingAcknowledgedIsLostOrCountedTwice()
    {
        var kills = Setting("HEAPWRIGHT_KILLS", 10);
        var most = TimeSpan.FromSeconds(Setting("HEAPWRIGHT_KILL_SECONDS", 120));
        var random = new Random(20260501);
        var watch = Stopwatch.StartNew();
        await using (var services = Open())
        {
            await services.GetRequiredService<SqliteFile>().BringUpToDate(Never);
            var desk = Desk(services);
            Assert.True(
                (await desk.Start.Start(HeapPageTests.Heap(heapId), EntryWay.Cli, Never)).IsDone
            );
            token = (await desk.Devices.Add("hammer", Never)).Token;
        }

        var killed = 0;
        long again = 0;
        while (killed < kills && watch.Elapsed < most)
        {
            // Every second time in the midst of the work, otherwise whenever it comes.
            again += await Round(killed % 2 == 0, random.Next(1, killed % 2 == 0 ? 300 : 2000));
            killed++;
            await Check();
        }

        TestContext.Current.TestOutputHelper?.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{killed} kills in {watch.Elapsed.TotalSeconds:0} s: {acknowledged.Count} entries acknowledged, {again} of them had been kept without an answer before; none lost, none twice"
            )
        );
        Assert.True(killed >= Math.Min(kills, 3), $"only {killed} kills in {watch.Elapsed}");
        Assert.NotEmpty(acknowledged);
    }

    public void Dispose()
    {
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    // Starts the program, sends until the moment comes, kills it. What was not answered is sent again next time.
    private async Task<long> Round(bool whenAnswered, int milliseconds)
    {
        using var process = Start();
        var url = await Listening(process);
        using var http = new HttpClient { BaseAddress = new Uri(url) };
        http.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);
        using var stop = new CancellationTokenSource();
        long again = 0;
        var senders = Enumerable
            .Range(0, Senders)
            .Select(_ =>
                Task.Run(async () => Interlocked.Add(ref again, await Hammer(http, stop.Token)))
            )
            .ToArray();
        var before = acknowledged.Count;
        while (whenAnswered && acknowledged.Count == before)
        {
            await Task.Delay(5, Never);
        }

        await Task.Delay(milliseconds, Never);
        process.Kill();
        await stop.CancelAsync();
        await Task.WhenAll(senders);
        await process.WaitForExitAsync(Never);
        return again;
    }

    private async Task<long> Hammer(HttpClient http, CancellationToken stop)
    {
        long again = 0;
        while (!stop.IsCancellationRequested)
        {
            var ids = new List<Guid>();
            while (ids.Count < 3 && unanswered.TryDequeue(out var old))
            {
                ids.Add(old);
            }

            while (ids.Count < 5)
            {
                ids.Add(Guid.CreateVersion7());
            }

            try
            {
                using var content = new StringContent(Body(ids), Encoding.UTF8, "application/json");
                using var answer = await http.PostAsync(
                    $"/api/heaps/{heapId}/entries",
                    content,
                    Never
                );
                var text = await answer.Content.ReadAsStringAsync(Never);
                Assert.True(answer.IsSuccessStatusCode, text);
                foreach (var result in JsonNode.Parse(text)!["results"]!.AsArray())
                {
                    acknowledged[
                        Guid.Parse(result!["id"]!.GetValue<string>(), CultureInfo.InvariantCulture)
                    ] = true;
                    again += result["status"]!.GetValue<string>() == "already" ? 1 : 0;
                }
            }
            catch (Exception problem) when (problem is HttpRequestException or IOException)
            {
                foreach (var id in ids)
                {
                    unanswered.Enqueue(id);
                }

                return again;
            }
        }

        return again;
    }

    // The same id always says the same, so that it can be sent again.
    private static string Body(IEnumerable<Guid> ids) =>
        "["
        + string.Join(
            ',',
            ids.Select(id =>
                string.Create(
                    CultureInfo.InvariantCulture,
                    $$"""{"id":"{{id}}","at":"2026-05-02T09:30:00+01:00","temperature_c":{{40 + (id.ToByteArray()[15] % 20)}},"spot":"core"}"""
                )
            )
        )
        + "]";

    private async Task Check()
    {
        await using var services = Open();
        var file = services.GetRequiredService<SqliteFile>();
        Assert.Equal(["ok"], await file.IntegrityCheck(Never));
        Assert.True((await Desk(services).Reader.Verify(heapId, Never)).IsWhole);
        var seen = new Dictionary<Guid, int>();
        await foreach (var link in services.GetRequiredService<IDiaryStore>().Chain(heapId))
        {
            seen[link.EntryId] = seen.GetValueOrDefault(link.EntryId) + 1;
        }

        Assert.All(seen.Values, n => Assert.Equal(1, n));
        Assert.All(
            acknowledged.Keys,
            id => Assert.True(seen.ContainsKey(id), $"{id} was acknowledged and is gone")
        );
    }

    private ServiceProvider Open() =>
        new ServiceCollection()
            .AddSingleton(TimeProvider.System)
            .AddSqliteStorage(folder)
            .AddSingleton<SiteRecorder>()
            .BuildServiceProvider();

    private static DiaryDesk Desk(ServiceProvider services) =>
        DiaryDesk.Over(
            services.GetRequiredService<SiteRecorder>(),
            services.GetRequiredService<IDiaryStore>(),
            services.GetRequiredService<IPhotoStore>(),
            services.GetRequiredService<IDeviceStore>(),
            new InProcessGate()
        );

    private Process Start()
    {
        var app = typeof(KillTests)
            .Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
            .Single(a => a.Key == "WebApp")
            .Value!;
        var start = new ProcessStartInfo("dotnet", "Heapwright.Web.dll")
        {
            WorkingDirectory = Path.GetFullPath(app),
            RedirectStandardOutput = true,
            UseShellExecute = false,
        };
        start.Environment["HEAPWRIGHT_URL"] = "http://127.0.0.1:0";
        start.Environment["HEAPWRIGHT_DATA"] = folder;
        start.Environment["ASPNETCORE_ENVIRONMENT"] = "Production";
        return Process.Start(start)!;
    }

    private static async Task<string> Listening(Process process)
    {
        while (await process.StandardOutput.ReadLineAsync(Never) is { } line)
        {
            if (Address().Match(line) is { Success: true } match)
            {
                _ = process.StandardOutput.ReadToEndAsync(Never);
                return match.Groups["url"].Value;
            }
        }

        throw new InvalidOperationException("the program did not start");
    }

    private static int Setting(string name, int usual) =>
        int.TryParse(
            Environment.GetEnvironmentVariable(name),
            NumberStyles.None,
            CultureInfo.InvariantCulture,
            out var value
        )
            ? value
            : usual;

    [GeneratedRegex(
        @"Now listening on: (?<url>http://127\.0\.0\.1:\d+)",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Address();
}
