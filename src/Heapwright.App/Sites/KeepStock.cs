using System.Globalization;
using Heapwright.App.Changes;
using Heapwright.App.Contract;

namespace Heapwright.App.Sites;

/// <summary>What is at hand: add, count, correct, take out.</summary>
/// <param name="recorder">The way to the record.</param>
public sealed class KeepStock(SiteRecorder recorder)
{
    /// <summary>Adds something at hand.</summary>
    /// <param name="entry">What, how much, since when.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<Outcome> Add(StockEntry entry, CancellationToken cancel) =>
        recorder.Put(
            "acts.stock_added",
            [Count(entry.Amount), entry.Unit, entry.Name],
            [entry],
            cancel
        );

    /// <summary>Says how much there is now.</summary>
    /// <param name="id">Of what.</param>
    /// <param name="amount">The amount in the unit of the entry; the result, not the difference.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<Outcome> SetAmount(Guid id, double amount, CancellationToken cancel) =>
        recorder.Edit<StockEntry>(
            id,
            old =>
                (
                    old with
                    {
                        Amount = amount,
                    },
                    "acts.stock_counted",
                    [old.Name, Count(old.Amount), Count(amount), old.Unit]
                ),
            cancel
        );

    /// <summary>Corrects an entry.</summary>
    /// <param name="entry">The entry as it shall be.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<Outcome> Change(StockEntry entry, CancellationToken cancel) =>
        recorder.Edit<StockEntry>(
            entry.Id,
            old => (entry with { IsSample = old.IsSample }, "acts.stock_changed", [entry.Name]),
            cancel
        );

    /// <summary>Takes an entry out.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<Outcome> Remove(StockEntry entry, CancellationToken cancel) =>
        recorder.Remove("acts.stock_removed", [entry.Name], [entry], cancel);

    private static string Count(double amount) => Figures.One(amount, CultureInfo.InvariantCulture);
}
