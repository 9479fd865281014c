using System.Collections.Immutable;
using System.Text.Json;
using Heapwright.App.Changes;

namespace Heapwright.App.Sites;

/// <summary>The record of changes as a file carries it: gone through from its beginning, it must lead to what the file holds.</summary>
public static class CarriedRecord
{
    /// <summary>The largest record a file carries, counted in the characters of the things in it.</summary>
    public const int MostCharacters = 12 << 20;

    private const int MostValues = 100;

    /// <summary>The acts if they are few enough for a file; empty otherwise, since half a record leads nowhere.</summary>
    /// <param name="acts">All acts, oldest first.</param>
    public static ImmutableArray<Act> Fitting(ImmutableArray<Act> acts)
    {
        long characters = 0;
        foreach (var act in acts)
        {
            foreach (var change in act.Changes)
            {
                characters += (change.Before?.Length ?? 0) + (change.After?.Length ?? 0);
            }
        }

        return characters <= MostCharacters ? acts : [];
    }

    /// <summary>What is wrong with a record; null if it can be taken over.</summary>
    /// <param name="acts">The acts of the file, oldest first; none is right for any file.</param>
    /// <param name="items">The things the file holds.</param>
    public static Refusal? Fault(ImmutableArray<Act> acts, IEnumerable<Item> items)
    {
        ArgumentNullException.ThrowIfNull(items);
        if (acts.IsEmpty)
        {
            return null;
        }

        var things = new Dictionary<(string Kind, Guid Id), string>();
        var numbers = new HashSet<long>();
        long last = 0;
        foreach (var act in acts)
        {
            if (
                act.Number <= last
                || (act.Undoes is { } undone && !numbers.Contains(undone))
                || !CanBeSaid(act)
                || !act.Changes.All(change => Follows(change, things))
            )
            {
                return Refusal.Of("file", "sites.import_record", act.Number);
            }

            last = act.Number;
            numbers.Add(last);
        }

        var held = items.ToDictionary(i => (ItemKinds.Of(i), i.Id), ItemKinds.Write);
        return
            held.Count == things.Count
            && held.All(h =>
                things.TryGetValue(h.Key, out var json)
                && string.Equals(json, h.Value, StringComparison.Ordinal)
            )
            ? null
            : Refusal.Of("file", "sites.import_record_end", acts.Length);
    }

    private static bool Follows(Change change, Dictionary<(string, Guid), string> things)
    {
        var key = (change.Kind, change.ItemId);
        if (
            !ItemKinds.All.Contains(change.Kind, StringComparer.Ordinal)
            || !string.Equals(
                things.GetValueOrDefault(key),
                change.Before,
                StringComparison.Ordinal
            )
        )
        {
            return false;
        }

        if (change.After is null)
        {
            return things.Remove(key);
        }

        things[key] = change.After;
        try
        {
            var item = ItemKinds.Read(change.Kind, change.After);
            return item.Id == change.ItemId
                && !item.Faults().Any()
                && string.Equals(ItemKinds.Write(item), change.After, StringComparison.Ordinal);
        }
        catch (JsonException)
        {
            return false;
        }
    }

    // The sentence of an act is shown later: it must be one of ours, with all its values. An act that takes back one that
    // took back another names them all, so there may be several values, but never very many.
    private static bool CanBeSaid(Act act)
    {
        if (act.Values.Length > MostValues)
        {
            return false;
        }

        try
        {
            return act.What.StartsWith("acts.", StringComparison.Ordinal)
                && !string.Equals(ActWords.Of(act), act.What, StringComparison.Ordinal);
        }
        catch (Exception problem) when (problem is FormatException or IndexOutOfRangeException)
        {
            return false;
        }
    }
}
