using System.Collections.Immutable;
using Heapwright.App.Links;
using NodaTime;

namespace Heapwright.App.Ports;

/// <summary>Where secret addresses are kept; of their tokens only the hash is.</summary>
public interface ILinkStore
{
    /// <summary>All addresses, in the order in which they were made.</summary>
    /// <param name="cancel">Gives up.</param>
    Task<ImmutableArray<Link>> All(CancellationToken cancel);

    /// <summary>Takes an address in.</summary>
    /// <param name="link">The address.</param>
    /// <param name="tokenHash">The SHA-256 of its token, in hexadecimal digits.</param>
    /// <param name="cancel">Gives up.</param>
    Task Add(Link link, string tokenHash, CancellationToken cancel);

    /// <summary>The address whose token has this hash, also where it is good no longer; null where there is none.</summary>
    /// <param name="tokenHash">The hash.</param>
    /// <param name="cancel">Gives up.</param>
    Task<Link?> FindByToken(string tokenHash, CancellationToken cancel);

    /// <summary>From now on an address is good no longer.</summary>
    /// <param name="id">The address.</param>
    /// <param name="at">When.</param>
    /// <param name="cancel">Gives up.</param>
    /// <returns>Whether there was such an address that was not taken back before.</returns>
    Task<bool> Revoke(Guid id, Instant at, CancellationToken cancel);
}
