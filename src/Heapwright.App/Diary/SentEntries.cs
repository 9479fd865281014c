using System.Collections.Immutable;
using Heapwright.App.Contract;
using Heapwright.Core.Readings;

namespace Heapwright.App.Diary;

/// <summary>Takes entries in JSON, as devices and people send them: one, or a list; what is wrong with one is told of that one.</summary>
/// <param name="entries">The way into the diary.</param>
public sealed class SentEntries(RecordEntries entries)
{
    /// <summary>The most entries in one request.</summary>
    public const int Most = 1000;

    /// <summary>Puts entries into the diary of a heap.</summary>
    /// <param name="input">An entry, or a list of entries.</param>
    /// <param name="arrival">How they came.</param>
    /// <param name="cancel">Gives up.</param>
    /// <returns>What became of each, in their order.</returns>
    /// <exception cref="InputProblem">It is neither an entry nor a list of at most <see cref="Most"/>.</exception>
    public async Task<ImmutableArray<EntryOutcome>> Take(
        Input input,
        Arrival arrival,
        CancellationToken cancel
    )
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(arrival);
        var items = input.IsObject ? [input] : input.Items(1, Most);
        var outcomes = new EntryOutcome[items.Count];
        var good = new List<(int Place, DiaryEntry Entry)>();
        for (var i = 0; i < items.Count; i++)
        {
            try
            {
                good.Add((i, EntryReader.Sent(items[i], arrival)));
            }
            catch (InputProblem problem)
            {
                outcomes[i] = EntryOutcome.Refused(
                    IdOf(items[i]),
                    "readings.entry_unreadable",
                    problem.Message
                );
            }
        }

        var kept = await entries.Record(arrival.HeapId, [.. good.Select(g => g.Entry)], cancel);
        for (var i = 0; i < good.Count; i++)
        {
            outcomes[good[i].Place] = kept[i];
        }

        return [.. outcomes];
    }

    private static Guid? IdOf(Input input)
    {
        try
        {
            return input
                .Named(100)
                .Where(f => f.Name == "id")
                .Select(f => (Guid?)EntryReader.Id(f.Value))
                .FirstOrDefault();
        }
        catch (InputProblem)
        {
            return null;
        }
    }
}
