using System.Collections.Immutable;
using Heapwright.App.Diary;
using NodaTime;

namespace Heapwright.App.Ports;

/// <summary>Which devices may send entries; of their tokens only the hash is kept.</summary>
public interface IDeviceStore
{
    /// <summary>All devices, those of the past included, in the order in which they were named.</summary>
    /// <param name="cancel">Gives up.</param>
    Task<ImmutableArray<Device>> All(CancellationToken cancel);

    /// <summary>Takes a device in.</summary>
    /// <param name="device">The device.</param>
    /// <param name="tokenHash">The SHA-256 of its token, in hexadecimal digits.</param>
    /// <param name="cancel">Gives up.</param>
    Task Add(Device device, string tokenHash, CancellationToken cancel);

    /// <summary>The device whose token has this hash, if it was not taken off; null otherwise. Its time may be over.</summary>
    /// <param name="tokenHash">The hash.</param>
    /// <param name="cancel">Gives up.</param>
    Task<Device?> FindByToken(string tokenHash, CancellationToken cancel);

    /// <summary>From now on the device may not send any more.</summary>
    /// <param name="id">The device.</param>
    /// <param name="at">When.</param>
    /// <param name="cancel">Gives up.</param>
    /// <returns>Whether there was such a device that still could.</returns>
    Task<bool> Revoke(Guid id, Instant at, CancellationToken cancel);
}
