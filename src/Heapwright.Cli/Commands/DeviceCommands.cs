using System.Globalization;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
using NodaTime;
using NodaTime.Text;
using Words = Heapwright.App.Texts.Words;

namespace Heapwright.Cli.Commands;

/// <summary>The commands about devices that may send entries.</summary>
/// <param name="open">Opens what is stored in a folder.</param>
internal sealed class DeviceCommands(Func<string, DiaryDesk> open)
{
    private readonly Stored stored = new(open);

    /// <summary>Names a device and shows its token.</summary>
    /// <param name="call">The call.</param>
    public Reply Add(Call call)
    {
        var name = string.Join(' ', call.Words);
        var role = Stored.Word(call, "--role", KeepDevices.Roles, KeepDevices.Roles[0]);
        var (device, token, refusal) = Stored.Await(
            stored.Open(call).Devices.Add(name, CancellationToken.None, KeepDevices.RoleOf(role))
        );
        return device is null
            ? throw new InputProblem("heapwright", "", Words.Of(refusal!.Why))
            : new Answer(
                new JsonObject
                {
                    ["schema"] = 1,
                    ["id"] = device.Id.ToString(),
                    ["name"] = device.Name,
                    ["role"] = KeepDevices.Of(device.Role),
                    ["token"] = token,
                },
                Yes: true,
                Words.Of("diary.device_added", null, device.Name, token)
            );
    }

    /// <summary>Lists the devices.</summary>
    /// <param name="call">The call.</param>
    public Reply List(Call call)
    {
        var devices = Stored.Await(stored.Open(call).Devices.All(CancellationToken.None));
        var lines = devices.Select(Line);
        return new Answer(
            new JsonObject
            {
                ["schema"] = 1,
                ["devices"] = new JsonArray([
                    .. devices.Select(d => new JsonObject
                    {
                        ["id"] = d.Id.ToString(),
                        ["name"] = d.Name,
                        ["role"] = KeepDevices.Of(d.Role),
                        ["made_at"] = InstantPattern.ExtendedIso.Format(d.MadeAt),
                        ["until"] = Time(d.Until),
                        ["revoked_at"] = Time(d.RevokedAt),
                    }),
                ]),
            },
            Yes: true,
            devices.IsEmpty ? Words.Of("diary.devices_none") : string.Join('\n', lines)
        );
    }

    /// <summary>A device may not send any more.</summary>
    /// <param name="call">The call.</param>
    public Reply Revoke(Call call)
    {
        var word = string.Join(' ', call.Words);
        return
            Guid.TryParse(word, CultureInfo.InvariantCulture, out var id)
            && Stored.Await(stored.Open(call).Devices.Revoke(id, CancellationToken.None))
            ? new Answer(
                new JsonObject { ["schema"] = 1, ["revoked"] = id.ToString() },
                Yes: true,
                Words.Of("diary.device_revoked")
            )
            : throw Stored.Wrong("diary.device_unknown", word);
    }

    private static string Line(Device device)
    {
        var (code, end) =
            device.RevokedAt is { } revoked ? ("diary.device_line_revoked", revoked)
            : device.Until is { } until ? ("diary.device_line_until", until)
            : ("diary.device_line", device.MadeAt);
        return Words.Of(
            code,
            null,
            device.Id,
            device.Name,
            Words.Of("diary.role_" + KeepDevices.Of(device.Role)),
            InstantPattern.General.Format(device.MadeAt),
            InstantPattern.General.Format(end)
        );
    }

    private static string? Time(Instant? at) =>
        at is { } some ? InstantPattern.ExtendedIso.Format(some) : null;
}
