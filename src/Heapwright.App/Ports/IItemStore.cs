using System.Collections.Immutable;
using Heapwright.App.Changes;
using Heapwright.App.Sites;
using NodaTime;

namespace Heapwright.App.Ports;

/// <summary>Where the things of a site are kept, each as it is now, with the record of how they came to be so.</summary>
public interface IItemStore
{
    /// <summary>All things of a kind, in the order in which they were first written.</summary>
    /// <typeparam name="T">The kind.</typeparam>
    /// <param name="cancel">Gives up.</param>
    Task<ImmutableArray<T>> All<T>(CancellationToken cancel)
        where T : Item;

    /// <summary>One thing, or null where there is none.</summary>
    /// <typeparam name="T">The kind.</typeparam>
    /// <param name="id">Which.</param>
    /// <param name="cancel">Gives up.</param>
    Task<T?> Find<T>(Guid id, CancellationToken cancel)
        where T : Item;

    /// <summary>
    /// Writes an act and all its changes, or nothing at all. What is written has reached the disk when this returns.
    /// </summary>
    /// <param name="act">The act; its number is given here.</param>
    /// <param name="cancel">Gives up.</param>
    /// <returns>The act with its number.</returns>
    /// <exception cref="ConflictException">A thing is not as its change says it was.</exception>
    Task<Act> Write(Act act, CancellationToken cancel);

    /// <summary>Writes many acts, in their order, or none of them; what an act undoes is found by its number among them.</summary>
    /// <param name="acts">The acts; new numbers are given here.</param>
    /// <param name="cancel">Gives up.</param>
    /// <returns>The last act with its number.</returns>
    /// <exception cref="ConflictException">A thing is not as its change says it was.</exception>
    Task<Act> WriteAll(ImmutableArray<Act> acts, CancellationToken cancel);

    /// <summary>All acts, oldest first.</summary>
    /// <param name="cancel">Gives up.</param>
    Task<ImmutableArray<Act>> Record(CancellationToken cancel);

    /// <summary>The latest acts, newest first, each with whether everything in it still stands as it left it.</summary>
    /// <param name="most">The most to return.</param>
    /// <param name="cancel">Gives up.</param>
    Task<ImmutableArray<ActInRecord>> Latest(int most, CancellationToken cancel);

    /// <summary>One act, or null where there is none.</summary>
    /// <param name="number">Its number.</param>
    /// <param name="cancel">Gives up.</param>
    Task<Act?> FindAct(long number, CancellationToken cancel);

    /// <summary>A thing as it is now, in JSON; null where it is not there.</summary>
    /// <param name="kind">Its kind.</param>
    /// <param name="id">Which.</param>
    /// <param name="cancel">Gives up.</param>
    Task<string?> Current(string kind, Guid id, CancellationToken cancel);

    /// <summary>When a thing was last changed; null where no act tells.</summary>
    /// <param name="kind">Its kind.</param>
    /// <param name="id">Which.</param>
    /// <param name="cancel">Gives up.</param>
    Task<Instant?> LastChange(string kind, Guid id, CancellationToken cancel);
}
