using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Heapwright.Core.Hygiene;

namespace Heapwright.App.HeatRecords;

/// <summary>
/// A record of heat in order of time, each entry with a hash that covers it and every entry before it; docs/models/hygiene.md
/// says how a third party works out the hashes again.
/// </summary>
public sealed class HeatRecord
{
    private readonly Dictionary<LogMoment, EntryTime> times = [];

    private HeatRecord(ImmutableArray<ChainedEntry> entries, HeatLog log, string start)
    {
        foreach (var entry in entries.Select(e => e.Entry).Where(e => !e.IsTurn))
        {
            times.TryAdd(entry.Time.Moment, entry.Time);
        }

        Entries = entries;
        Log = log;
        Hash = entries.IsEmpty ? start : entries[^1].Hash;
    }

    /// <summary>The entries in order.</summary>
    public ImmutableArray<ChainedEntry> Entries { get; }

    /// <summary>The entries for the accounting.</summary>
    public HeatLog Log { get; }

    /// <summary>The hash of the last entry, which covers all.</summary>
    public string Hash { get; }

    /// <summary>A record, whatever order its entries come in.</summary>
    /// <param name="entries">The entries; at least one of them a reading.</param>
    /// <param name="turnsAreKnown">Whether the record says of turns; otherwise nobody knows of any.</param>
    /// <param name="process">The word for the kind of process.</param>
    public static HeatRecord Of(IEnumerable<HeatEntry> entries, bool turnsAreKnown, string process)
    {
        var start = HashOf("heapwright heat record 1|" + process);
        var hash = start;
        var chained = ImmutableArray.CreateBuilder<ChainedEntry>();
        foreach (var entry in InOrder(entries))
        {
            var number = chained.Count + 1;
            hash = HashOf(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{hash}\n{number}|{entry.Time.Text}|{(entry.IsTurn ? "turn" : "reading")}|{entry.Written}|{entry.Probe}"
                )
            );
            chained.Add(new ChainedEntry(number, entry, hash));
        }

        var all = chained.ToImmutable();
        return new HeatRecord(
            all,
            HeatLog.Of(
                all.Where(e => !e.Entry.IsTurn)
                    .Select(e => new LogReading(
                        e.Entry.Time.Moment.Hours,
                        e.Entry.Time.Moment.Day,
                        e.Entry.Probe!,
                        e.Entry.Celsius
                    )),
                turnsAreKnown
                    ? all.Where(e => e.Entry.IsTurn)
                        .Select(e => new LogTurn(
                            e.Entry.Time.Moment.Hours,
                            e.Entry.Time.Moment.Day
                        ))
                    : null
            ),
            start
        );
    }

    /// <summary>The time of a moment of the log as it stands in the record.</summary>
    /// <param name="moment">A moment at which there is a reading.</param>
    public EntryTime TimeOf(LogMoment moment) => times[moment];

    // By time, readings before turns, probe and temperature, so that the order of the rows in a file does not matter.
    private static IEnumerable<HeatEntry> InOrder(IEnumerable<HeatEntry> entries) =>
        entries
            .OrderBy(e => e.Time.Moment.Hours)
            .ThenBy(e => e.IsTurn)
            .ThenBy(e => e.Probe, StringComparer.Ordinal)
            .ThenBy(e => e.Celsius)
            .ThenBy(e => e.Time.Text, StringComparer.Ordinal)
            .ThenBy(e => e.Written, StringComparer.Ordinal);

    private static string HashOf(string text) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
}
