using System.Net;
using System.Net.Sockets;
using Heapwright.App.Diary;
using Heapwright.Core.Readings;
using Heapwright.Web.Messages;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Extensions.DependencyInjection;
using MQTTnet;
using MQTTnet.Protocol;
using MQTTnet.Server;

namespace Heapwright.Web.Tests;

/// <summary>A real broker on this machine, and the program listening to it.</summary>
public sealed class MqttTests : IAsyncLifetime
{
    private static readonly CancellationToken Never = CancellationToken.None;
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);
    private readonly int port = FreePort();
    private readonly Guid heapId = Guid.CreateVersion7();
    private readonly SiteUnderTest plain = new();
    private WebApplicationFactory<Program> site = null!;
    private MqttServer broker = null!;

    private DiaryDesk Desk => site.Services.GetRequiredService<DiaryDesk>();

    private MessageCounts Counts => site.Services.GetRequiredService<MessageCounts>();

    public async ValueTask InitializeAsync()
    {
        broker = await Broker();
        site = plain.WithWebHostBuilder(b =>
            b.UseSetting("HEAPWRIGHT_MQTT", $"mqtt://127.0.0.1:{port}/garden")
                .UseSetting("HEAPWRIGHT_MQTT_USER", "ann")
                .UseSetting("HEAPWRIGHT_MQTT_PASSWORD", "compost")
        );
        await Desk.Start.Start(HeapPageTests.Heap(heapId), EntryWay.Cli, Never);
        await Until(() => Counts.IsConnected);
    }

    public async ValueTask DisposeAsync()
    {
        await site.DisposeAsync();
        await plain.DisposeAsync();
        await broker.StopAsync();
        broker.Dispose();
    }

    [Fact]
    public async Task Message_WithAReading_IsKeptAndTheSameOneAgainCountsOnce()
    {
        var message = $$"""{"at":"{{HeapPageTests.Now()}}","temperature_c":57.5,"spot":"top"}""";

        await Publish(message);
        await Until(() => Counts.Kept == 1);
        await Publish(message);
        await Until(() => Counts.Already == 1);

        var record = await Desk.Reader.Of(heapId, null, Never);
        var reading = (TemperatureEntry)
            record!.Diary.Standing.Single(s => s.Entry is TemperatureEntry).Entry;
        Assert.Equal(57.5, reading.Temperature.DegreesCelsius);
        Assert.Equal(ProbeSpot.Top, reading.Spot);
        Assert.Equal(EntryWay.Mqtt, reading.Way);
    }

    [Fact]
    public async Task Message_ThatCannotBeRead_IsCountedWithItsReasonAndTheNextIsKept()
    {
        await Publish("58 degrees");
        await Publish("""{"temperature_c":58}""");
        await Publish(
            """{"id":"0198f3a0-7c1e-7b60-9d2e-3f1f6f0a4c11","temperature_c":58}""",
            "garden/heaps/none/entries"
        );
        await Publish("""{"id":"0198f3a0-7c1e-7b60-9d2e-3f1f6f0a4c11","temperature_c":58}""");

        await Until(() => Counts.Kept == 1);

        Assert.Equal(
            [("readings.entry_unreadable", 1), ("readings.heap_unknown", 1), ("unreadable", 1)],
            Counts.Refused.Select(r => (r.Key, r.Value))
        );
        Assert.Equal(2, (await Desk.Reader.Verify(heapId, Never)).Entries);
    }

    [Fact]
    public async Task Broker_ThatGoesAndComesBack_IsListenedToAgain()
    {
        await broker.StopAsync();
        broker.Dispose();
        await Until(() => !Counts.IsConnected);
        broker = await Broker();
        await Until(() => Counts.IsConnected);

        await Publish($$"""{"at":"{{HeapPageTests.Now()}}","temperature_c":44}""");

        await Until(() => Counts.Kept == 1);
    }

    [Theory]
    [InlineData("broker.local", "HEAPWRIGHT_MQTT is")]
    [InlineData("http://broker.local", "HEAPWRIGHT_MQTT is")]
    [InlineData("mqtt://broker.local/a/+", "HEAPWRIGHT_MQTT is")]
    public void Address_ThatIsNone_IsRefusedInOneSentence(string address, string part)
    {
        var (settings, wrong) = MqttSettings.Read(name =>
            name == "HEAPWRIGHT_MQTT" ? address : null
        );

        Assert.Null(settings);
        Assert.Contains(part, wrong, StringComparison.Ordinal);
    }

    private async Task Publish(string payload, string? topic = null)
    {
        using var client = new MqttClientFactory().CreateMqttClient();
        await client.ConnectAsync(
            new MqttClientOptionsBuilder()
                .WithTcpServer("127.0.0.1", port)
                .WithCredentials("ann", "compost")
                .Build(),
            Never
        );
        await client.PublishAsync(
            new MqttApplicationMessageBuilder()
                .WithTopic(topic ?? $"garden/heaps/{heapId}/entries")
                .WithPayload(payload)
                .WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce)
                .Build(),
            Never
        );
        await client.DisconnectAsync(cancellationToken: Never);
    }

    private async Task<MqttServer> Broker()
    {
        var server = new MqttServerFactory().CreateMqttServer(
            new MqttServerOptionsBuilder()
                .WithDefaultEndpoint()
                .WithDefaultEndpointBoundIPAddress(IPAddress.Loopback)
                .WithDefaultEndpointPort(port)
                .WithPersistentSessions()
                .Build()
        );
        server.ValidatingConnectionAsync += connection =>
        {
            if (connection.UserName != "ann" || connection.Password != "compost")
            {
                connection.ReasonCode = MqttConnectReasonCode.BadUserNameOrPassword;
            }

            return Task.CompletedTask;
        };
        await server.StartAsync();
        return server;
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    // The other side works by itself; it is looked at until it is so far, however slow the machine is.
    private static async Task Until(Func<bool> so)
    {
        using var patience = new CancellationTokenSource(Patience);
        while (!so())
        {
            await Task.Delay(20, patience.Token);
        }
    }
}
