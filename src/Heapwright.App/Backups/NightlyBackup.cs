using Heapwright.App.Ports;
using Heapwright.App.Sites;
using NodaTime;

namespace Heapwright.App.Backups;

/// <summary>Sees to it that there is a backup of every night, however often the program was off.</summary>
/// <param name="backups">Makes them.</param>
/// <param name="items">Where the site is kept.</param>
/// <param name="clock">The clock.</param>
public sealed class NightlyBackup(IBackups backups, IItemStore items, TimeProvider clock)
{
    /// <summary>The hour at the site from which on the backup of a day is due.</summary>
    public const int Hour = 3;

    /// <summary>A last backup older than this is worth a word.</summary>
    public static Duration TooOld { get; } = Duration.FromDays(2);

    private Instant? failedAt;
    private Changes.Refusal? failure;

    /// <summary>Why the last attempt failed, and when; null where it did not.</summary>
    public (Instant At, Changes.Refusal Why)? Failure =>
        failedAt is { } at && failure is { } why ? (at, why) : null;

    /// <summary>Makes the backup of the night, if it is due.</summary>
    /// <param name="cancel">Gives up.</param>
    /// <returns>What became of it; null where none was due.</returns>
    public async Task<BackupMade?> IfDue(CancellationToken cancel)
    {
        if (await items.Find<Site>(Site.OnlyId, cancel) is not { } site)
        {
            return null;
        }

        var due = LastHour(clock.Now(), site.TimeZone());
        var all = await backups.All(cancel);
        return all.Any(b => b.Kind == BackupKind.Nightly && b.MadeAt >= due)
            ? null
            : await Make(BackupKind.Nightly, cancel);
    }

    /// <summary>Makes a backup now.</summary>
    /// <param name="kind">Why.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<BackupMade> Make(BackupKind kind, CancellationToken cancel)
    {
        var made = await backups.Make(kind, cancel);
        failure = made.Refusal;
        failedAt = made.Refusal is null ? null : clock.Now();
        return made;
    }

    // The last time the clock on the wall of the site showed the hour.
    private static Instant LastHour(Instant now, DateTimeZone zone)
    {
        var today = SiteDays.DayOf(now, zone);
        var hour = At(today, zone);
        return hour <= now ? hour : At(today.PlusDays(-1), zone);
    }

    private static Instant At(LocalDate day, DateTimeZone zone) =>
        day.At(new LocalTime(Hour, 0)).InZoneLeniently(zone).ToInstant();
}
