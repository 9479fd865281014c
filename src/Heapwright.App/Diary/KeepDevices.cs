using System.Collections.Immutable;
using Heapwright.App.Changes;
using Heapwright.App.Links;
using Heapwright.App.Ports;
using Heapwright.App.Sites;
using NodaTime;

namespace Heapwright.App.Diary;

/// <summary>The devices that may send entries. A token is shown once and kept nowhere; what is kept tells only whether one is right.</summary>
/// <param name="store">Where the devices are kept.</param>
/// <param name="clock">The clock.</param>
public sealed class KeepDevices(IDeviceStore store, TimeProvider clock)
{
    /// <summary>The longest name of a device, in characters.</summary>
    public const int LongestName = 60;

    private const string Mark = "hwd_";

    /// <summary>The words for what a device may do, in the order of <see cref="DeviceRole"/>.</summary>
    public static IReadOnlyList<string> Roles { get; } = ["volunteer", "coordinator"];

    /// <summary>The word for what a device may do.</summary>
    /// <param name="role">The role.</param>
    public static string Of(DeviceRole role) => Roles[(int)role];

    /// <summary>The role a word stands for; that which may do the least where the word is unknown.</summary>
    /// <param name="word">The word.</param>
    public static DeviceRole RoleOf(string? word) =>
        word == Of(DeviceRole.Coordinator) ? DeviceRole.Coordinator : DeviceRole.Volunteer;

    /// <summary>All devices.</summary>
    /// <param name="cancel">Gives up.</param>
    public Task<ImmutableArray<Device>> All(CancellationToken cancel) => store.All(cancel);

    /// <summary>Names a device and gives it a token.</summary>
    /// <param name="name">What people call it.</param>
    /// <param name="cancel">Gives up.</param>
    /// <param name="role">What it may do.</param>
    /// <param name="until">Until when; null for as long as it is not taken off.</param>
    /// <returns>The device with its token, which cannot be had again; or why it is refused.</returns>
    public async Task<(Device? Device, string Token, Refusal? Refusal)> Add(
        string name,
        CancellationToken cancel,
        DeviceRole role = DeviceRole.Volunteer,
        Instant? until = null
    )
    {
        ArgumentNullException.ThrowIfNull(name);
        if (Check.Words(name, "name", 1, LongestName).FirstOrDefault() is { } fault)
        {
            return (null, "", fault);
        }

        var token = SecretToken.New(Mark);
        var device = new Device(
            Guid.CreateVersion7(),
            name.Trim(),
            role,
            clock.Now(),
            until,
            RevokedAt: null
        );
        await store.Add(device, SecretToken.Hash(token), cancel);
        return (device, token, null);
    }

    /// <summary>The device that has a token, if it may still send; null otherwise.</summary>
    /// <param name="token">The token as it was sent.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<Device?> Of(string token, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(token);
        // The hash is looked up, so that how long it takes tells nothing of how much of a token was right.
        return
            token.Length is > 0 and <= SecretToken.Longest
            && await store.FindByToken(SecretToken.Hash(token), cancel) is { } device
            && device.MayWrite(clock.Now())
            ? device
            : null;
    }

    /// <summary>From now on the device may not send any more.</summary>
    /// <param name="id">The device.</param>
    /// <param name="cancel">Gives up.</param>
    /// <returns>Whether there was such a device that still could.</returns>
    public Task<bool> Revoke(Guid id, CancellationToken cancel) =>
        store.Revoke(id, clock.Now(), cancel);
}
