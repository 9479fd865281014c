using System.Collections.Immutable;
using Heapwright.App.Ports;
using Heapwright.App.Sites;
using NodaTime;

namespace Heapwright.App.Links;

/// <summary>The secret addresses. A token is shown once and kept nowhere.</summary>
/// <param name="store">Where the addresses are kept.</param>
/// <param name="clock">The clock.</param>
public sealed class KeepLinks(ILinkStore store, TimeProvider clock)
{
    /// <summary>The most days after which a shared address may end.</summary>
    public const int MostDays = 3660;

    /// <summary>All addresses, those of the past included, in the order in which they were made.</summary>
    /// <param name="cancel">Gives up.</param>
    public Task<ImmutableArray<Link>> All(CancellationToken cancel) => store.All(cancel);

    /// <summary>Makes an address for calendars; the one before it is good no longer.</summary>
    /// <param name="cancel">Gives up.</param>
    /// <returns>The address with its token, which cannot be had again.</returns>
    public async Task<(Link Link, string Token)> Calendar(CancellationToken cancel)
    {
        foreach (var old in await store.All(cancel))
        {
            if (old is { Purpose: LinkPurpose.Calendar, RevokedAt: null })
            {
                await store.Revoke(old.Id, clock.Now(), cancel);
            }
        }

        return await Add(LinkPurpose.Calendar, null, null, cancel);
    }

    /// <summary>Makes an address that shows a heap, or the yard.</summary>
    /// <param name="heapId">The heap; null for the yard.</param>
    /// <param name="days">After how many days it ends; null for never.</param>
    /// <param name="cancel">Gives up.</param>
    /// <returns>The address with its token, which cannot be had again.</returns>
    public Task<(Link Link, string Token)> Share(
        Guid? heapId,
        int? days,
        CancellationToken cancel
    ) =>
        Add(
            LinkPurpose.Share,
            heapId,
            days is { } number
                ? clock.Now() + Duration.FromDays(Math.Clamp(number, 1, MostDays))
                : null,
            cancel
        );

    /// <summary>The address that has a token, if it is good; null otherwise.</summary>
    /// <param name="token">The token as it was sent.</param>
    /// <param name="purpose">What it must be for.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<Link?> Of(string token, LinkPurpose purpose, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(token);
        // The hash is looked up, so that how long it takes tells nothing of how much of a token was right.
        return
            token.Length is > 0 and <= SecretToken.Longest
            && await store.FindByToken(SecretToken.Hash(token), cancel) is { } link
            && link.Purpose == purpose
            && link.IsGood(clock.Now())
            ? link
            : null;
    }

    /// <summary>From now on an address is good no longer.</summary>
    /// <param name="id">The address.</param>
    /// <param name="cancel">Gives up.</param>
    /// <returns>Whether there was such an address that still was.</returns>
    public Task<bool> Revoke(Guid id, CancellationToken cancel) =>
        store.Revoke(id, clock.Now(), cancel);

    private async Task<(Link Link, string Token)> Add(
        LinkPurpose purpose,
        Guid? heapId,
        Instant? expires,
        CancellationToken cancel
    )
    {
        var token = SecretToken.New(purpose == LinkPurpose.Calendar ? "hwc_" : "hws_");
        var link = new Link(Guid.CreateVersion7(), purpose, heapId, clock.Now(), expires, null);
        await store.Add(link, SecretToken.Hash(token), cancel);
        return (link, token);
    }
}
