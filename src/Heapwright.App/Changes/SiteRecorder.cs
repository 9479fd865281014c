using System.Collections.Immutable;
using System.Globalization;
using Heapwright.App.Ports;
using Heapwright.App.Sites;

namespace Heapwright.App.Changes;

/// <summary>
/// The one way by which anything kept at the site changes: one writer at a time, every change in the record, all of
/// an act or nothing of it.
/// </summary>
/// <param name="store">Where things are kept.</param>
/// <param name="clock">When it happens.</param>
public sealed class SiteRecorder(IItemStore store, TimeProvider clock) : IDisposable
{
    private readonly SemaphoreSlim gate = new(1, 1);

    /// <summary>Where things are kept.</summary>
    public IItemStore Store => store;

    /// <summary>The clock.</summary>
    public TimeProvider Clock => clock;

    /// <summary>Puts things in, or in place of those with the same id.</summary>
    /// <param name="what">The code of the sentence that says what was done.</param>
    /// <param name="values">The values in it.</param>
    /// <param name="items">The things as they shall be.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<Outcome> Put(
        string what,
        ImmutableArray<string> values,
        IReadOnlyCollection<Item> items,
        CancellationToken cancel
    )
    {
        ImmutableArray<Refusal> faults = [.. items.SelectMany(i => i.Faults())];
        return faults.IsEmpty
            ? await Record(
                what,
                values,
                [.. items.Select(i => (ItemKinds.Of(i), i.Id, (string?)ItemKinds.Write(i)))],
                cancel
            )
            : new Outcome(null, faults);
    }

    /// <summary>Changes one thing, from whatever it is when its turn comes.</summary>
    /// <typeparam name="T">The kind of thing.</typeparam>
    /// <param name="id">Which.</param>
    /// <param name="change">What it becomes, and the sentence for it; the same thing where nothing changes.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<Outcome> Edit<T>(
        Guid id,
        Func<T, (T Item, string What, ImmutableArray<string> Values)> change,
        CancellationToken cancel
    )
        where T : Item
    {
        await gate.WaitAsync(cancel);
        try
        {
            if (await store.Find<T>(id, cancel) is not { } old)
            {
                return Outcome.Refused(Refusal.Of("", "sites.gone"));
            }

            var (item, what, values) = change(old);
            ImmutableArray<Refusal> faults = [.. item.Faults()];
            return faults.IsEmpty
                ? await Write(
                    what,
                    values,
                    [(ItemKinds.Of(item), id, ItemKinds.Write(item))],
                    null,
                    cancel
                )
                : new Outcome(null, faults);
        }
        finally
        {
            gate.Release();
        }
    }

    /// <summary>Takes things out; the record keeps them.</summary>
    /// <param name="what">The code of the sentence that says what was done.</param>
    /// <param name="values">The values in it.</param>
    /// <param name="items">The things.</param>
    /// <param name="cancel">Gives up.</param>
    public Task<Outcome> Remove(
        string what,
        ImmutableArray<string> values,
        IReadOnlyCollection<Item> items,
        CancellationToken cancel
    ) =>
        Record(
            what,
            values,
            [.. items.Select(i => (ItemKinds.Of(i), i.Id, (string?)null))],
            cancel
        );

    /// <summary>Takes an act back by a new act that puts everything as it was; the old act stays in the record.</summary>
    /// <param name="number">The number of the act.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<Outcome> Undo(long number, CancellationToken cancel)
    {
        await gate.WaitAsync(cancel);
        try
        {
            if (await store.FindAct(number, cancel) is not { } act)
            {
                return Outcome.Refused(Refusal.Of("", "sites.act_unknown", number));
            }

            foreach (var change in act.Changes)
            {
                var now = await store.Current(change.Kind, change.ItemId, cancel);
                if (!string.Equals(now, change.After, StringComparison.Ordinal))
                {
                    return Outcome.Refused(Refusal.Of("", "sites.act_superseded"));
                }
            }

            return await Write(
                "acts.undone",
                [act.What, .. act.Values],
                [.. act.Changes.Reverse().Select(c => (c.Kind, c.ItemId, c.Before))],
                act.Number,
                cancel
            );
        }
        finally
        {
            gate.Release();
        }
    }

    /// <summary>Takes a whole record over, where nothing was ever kept; a last act says so.</summary>
    /// <param name="acts">The acts, oldest first, each following from those before it.</param>
    /// <param name="cancel">Gives up.</param>
    /// <returns>Null where there is a record already, which is left as it is.</returns>
    public async Task<Outcome?> TakeOver(ImmutableArray<Act> acts, CancellationToken cancel)
    {
        await gate.WaitAsync(cancel);
        try
        {
            if (!(await store.Latest(1, cancel)).IsEmpty)
            {
                return null;
            }

            var said = new Act
            {
                Number = acts[^1].Number + 1,
                At = clock.Now(),
                What = "acts.record_imported",
                Values = [acts.Length.ToString(CultureInfo.InvariantCulture)],
                Changes = [],
            };
            return new Outcome(await store.WriteAll([.. acts, said], cancel), [], null);
        }
        finally
        {
            gate.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => gate.Dispose();

    private async Task<Outcome> Record(
        string what,
        ImmutableArray<string> values,
        ImmutableArray<(string Kind, Guid Id, string? After)> changes,
        CancellationToken cancel
    )
    {
        await gate.WaitAsync(cancel);
        try
        {
            return await Write(what, values, changes, null, cancel);
        }
        finally
        {
            gate.Release();
        }
    }

    private async Task<Outcome> Write(
        string what,
        ImmutableArray<string> values,
        ImmutableArray<(string Kind, Guid Id, string? After)> changes,
        long? undoes,
        CancellationToken cancel
    )
    {
        var real = ImmutableArray.CreateBuilder<Change>(changes.Length);
        foreach (var (kind, id, after) in changes)
        {
            var before = await store.Current(kind, id, cancel);
            if (!string.Equals(before, after, StringComparison.Ordinal))
            {
                real.Add(new Change(kind, id, before, after));
            }
        }

        Guid? only = changes.Length == 1 ? changes[0].Id : null;
        if (real.Count == 0)
        {
            return new Outcome(null, [], only);
        }

        var act = await store.Write(
            new Act
            {
                At = clock.Now(),
                What = what,
                Values = values,
                Undoes = undoes,
                Changes = real.ToImmutable(),
            },
            cancel
        );
        return new Outcome(act, [], only);
    }
}
