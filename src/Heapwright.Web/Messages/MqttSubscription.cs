using System.Buffers;
using System.Globalization;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
using Heapwright.App.Texts;
using Heapwright.Core.Readings;
using MQTTnet;
using MQTTnet.Exceptions;
using MQTTnet.Formatter;
using MQTTnet.Protocol;

namespace Heapwright.Web.Messages;

/// <summary>
/// Listens to a broker. A message is acknowledged when its entries have reached the disk or were refused for good; until
/// then the broker keeps it and sends it again, and what comes twice counts once.
/// </summary>
internal sealed partial class MqttSubscription(
    MqttSettings settings,
    DiaryDesk desk,
    MessageCounts counts,
    TimeProvider clock,
    ILogger<MqttSubscription> log
) : BackgroundService
{
    private const string ClientId = "heapwright";
    private static readonly TimeSpan FirstWait = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(30);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var client = new MqttClientFactory().CreateMqttClient();
        client.ApplicationMessageReceivedAsync += message => Take(message, stoppingToken);
        var wait = FirstWait;
        while (!stoppingToken.IsCancellationRequested)
        {
            var gone = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
            client.DisconnectedAsync += Gone;
            try
            {
                await Listen(client, stoppingToken);
                counts.IsConnected = true;
                wait = FirstWait;
                await gone.Task.WaitAsync(stoppingToken);
                LogGone(settings.Host);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                break;
            }
            catch (Exception problem)
                when (problem
                        is MqttCommunicationException
                            or MqttProtocolViolationException
                            or OperationCanceledException
                            or InvalidOperationException
                            or IOException
                )
            {
                LogUnreachable(settings.Host, settings.Port, problem.Message);
            }
            finally
            {
                counts.IsConnected = false;
                client.DisconnectedAsync -= Gone;
            }

            try
            {
                await Task.Delay(wait, clock, stoppingToken);
            }
            catch (OperationCanceledException)
            {
                break;
            }

            wait = wait * 2 < LongestWait ? wait * 2 : LongestWait;

            Task Gone(MqttClientDisconnectedEventArgs _)
            {
                gone.TrySetResult();
                return Task.CompletedTask;
            }
        }

        if (client.IsConnected)
        {
            await client.DisconnectAsync(cancellationToken: CancellationToken.None);
        }
    }

    private async Task Listen(IMqttClient client, CancellationToken stop)
    {
        // The broker remembers who listens: what is sent while nobody does is delivered afterwards.
        var options = new MqttClientOptionsBuilder()
            .WithTcpServer(settings.Host, settings.Port)
            .WithProtocolVersion(MqttProtocolVersion.V311)
            .WithClientId(ClientId)
            .WithCleanSession(false);
        if (settings.IsEncrypted)
        {
            options = options.WithTlsOptions(tls => tls.UseTls());
        }

        if (settings.User is { Length: > 0 } user)
        {
            options = options.WithCredentials(user, settings.Password ?? "");
        }

        await client.ConnectAsync(options.Build(), stop);
        await client.SubscribeAsync(
            new MqttClientSubscribeOptionsBuilder()
                .WithTopicFilter(settings.Topics, MqttQualityOfServiceLevel.AtLeastOnce)
                .Build(),
            stop
        );
    }

    private async Task Take(MqttApplicationMessageReceivedEventArgs message, CancellationToken stop)
    {
        message.AutoAcknowledge = false;
        var topic = message.ApplicationMessage.Topic;
        try
        {
            await Take(topic, message.ApplicationMessage.Payload, stop);
        }
        catch (InputProblem problem)
        {
            counts.CountRefused("unreadable");
            LogRefused(topic, problem.Message);
        }
#pragma warning disable CA1031 // Whatever went wrong here, the message is not acknowledged and comes again.
        catch (Exception problem)
#pragma warning restore CA1031
        {
            LogNotKept(topic, problem);
            return;
        }

        await message.AcknowledgeAsync(stop);
    }

    private async Task Take(string topic, ReadOnlySequence<byte> payload, CancellationToken stop)
    {
        var parts = topic[settings.Prefix.Length..].Split('/');
        if (
            !Guid.TryParse(parts[^2], CultureInfo.InvariantCulture, out var heapId)
            || await desk.Entries.Arrive(heapId, EntryWay.Mqtt, stop) is not { } arrival
        )
        {
            counts.CountRefused("readings.heap_unknown");
            LogRefused(topic, Words.Of("readings.heap_unknown"));
            return;
        }

        if (payload.Length > Input.LargestBytes)
        {
            counts.CountRefused("too_large");
            LogRefused(topic, Showing.Say.Of("guard.too_large", Input.LargestBytes));
            return;
        }

        var input = Input.Read(payload.ToArray(), "message");
        foreach (var outcome in await desk.Sent.Take(input, arrival, stop))
        {
            switch (outcome.Status)
            {
                case AppendStatus.Kept:
                    counts.CountKept();
                    break;
                case AppendStatus.AlreadyThere:
                    counts.CountAlready();
                    break;
                default:
                    counts.CountRefused(outcome.Why!.Code);
                    LogRefused(topic, Words.Of(outcome.Why));
                    break;
            }
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The broker {Host} is gone; trying again")]
    private partial void LogGone(string host);

    [LoggerMessage(
        Level = LogLevel.Warning,
        Message = "The broker {Host}:{Port} cannot be reached ({Reason}); trying again"
    )]
    private partial void LogUnreachable(string host, int port, string reason);

    [LoggerMessage(
        Level = LogLevel.Warning,
        Message = "A message under {Topic} was refused: {Reason}"
    )]
    private partial void LogRefused(string topic, string reason);

    [LoggerMessage(
        Level = LogLevel.Error,
        Message = "A message under {Topic} could not be kept; the broker will send it again"
    )]
    private partial void LogNotKept(string topic, Exception problem);
}
