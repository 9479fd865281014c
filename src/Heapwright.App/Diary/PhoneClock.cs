namespace Heapwright.App.Diary;

/// <summary>
/// Finds the time of an entry that was made on a phone without a connection. A phone's clock can be wrong, and the only
/// thing that tells is how far it is off when the entry is sent.
/// </summary>
public static class PhoneClock
{
    /// <summary>A difference up to this is the way through the network and the usual error of clocks.</summary>
    public static TimeSpan Tolerance { get; } = TimeSpan.FromMinutes(2);

    /// <summary>The time of an entry.</summary>
    /// <param name="made">When it was made, by the phone's clock.</param>
    /// <param name="sent">When it was sent, by the phone's clock.</param>
    /// <param name="seen">The site's time when phone and site last met before it was made; null if not known.</param>
    /// <param name="received">When it came, by the site's clock.</param>
    /// <returns>
    /// The time, and how far the clock was ahead (negative: behind) where that was more than <see cref="Tolerance"/>; a
    /// null time where the clock was set between making and sending, so that nothing tells how far it was off before.
    /// </returns>
    public static (DateTimeOffset? At, TimeSpan Ahead) Settle(
        DateTimeOffset made,
        DateTimeOffset sent,
        DateTimeOffset? seen,
        DateTimeOffset received
    )
    {
        var ahead = sent - received;
        var at = ahead.Duration() <= Tolerance ? made : made - ahead;
        ahead = ahead.Duration() <= Tolerance ? TimeSpan.Zero : ahead;
        var beforeTheyMet = seen is { } met && at < met - Tolerance;
        return beforeTheyMet || at > received + Tolerance ? (null, ahead)
            : at > received ? (received, ahead)
            : (at, ahead);
    }
}
