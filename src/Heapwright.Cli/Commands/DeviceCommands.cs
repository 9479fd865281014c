using System.Globalization;
using System.Text.Json.Nodes;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
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
        var (device, token, refusal) = Stored.Await(
            stored.Open(call).Devices.Add(name, CancellationToken.None)
        );
        return device is null
            ? throw new InputProblem("heapwright", "", Words.Of(refusal!.Why))
            : new Answer(
                new JsonObject
                {
                    ["schema"] = 1,
                    ["id"] = device.Id.ToString(),
                    ["name"] = device.Name,
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
        var lines = devices.Select(d =>
            d.RevokedAt is { } revoked
                ? Words.Of(
                    "diary.device_line_revoked",
                    null,
                    d.Id,
                    d.Name,
                    InstantPattern.General.Format(d.MadeAt),
                    InstantPattern.General.Format(revoked)
                )
                : Words.Of(
                    "diary.device_line",
                    null,
                    d.Id,
                    d.Name,
                    InstantPattern.General.Format(d.MadeAt)
                )
        );
        return new Answer(
            new JsonObject
            {
                ["schema"] = 1,
                ["devices"] = new JsonArray([
                    .. devices.Select(d => new JsonObject
                    {
                        ["id"] = d.Id.ToString(),
                        ["name"] = d.Name,
                        ["made_at"] = InstantPattern.ExtendedIso.Format(d.MadeAt),
                        ["revoked_at"] = d.RevokedAt is { } at
                            ? InstantPattern.ExtendedIso.Format(at)
                            : null,
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
}
