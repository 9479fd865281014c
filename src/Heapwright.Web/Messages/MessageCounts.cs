using System.Collections.Immutable;

namespace Heapwright.Web.Messages;

/// <summary>What became of the messages since the program was started.</summary>
public sealed class MessageCounts
{
    private readonly Lock gate = new();
    private readonly Dictionary<string, long> refused = new(StringComparer.Ordinal);
    private long kept;
    private long already;
    private bool isConnected;

    /// <summary>Entries that were kept.</summary>
    public long Kept => Interlocked.Read(ref kept);

    /// <summary>Entries that were there already.</summary>
    public long Already => Interlocked.Read(ref already);

    /// <summary>Whether the broker is listened to at this moment.</summary>
    public bool IsConnected
    {
        get => Volatile.Read(ref isConnected);
        internal set => Volatile.Write(ref isConnected, value);
    }

    /// <summary>Messages and entries that were refused, by the code of the reason.</summary>
    public ImmutableSortedDictionary<string, long> Refused
    {
        get
        {
            lock (gate)
            {
                return refused.ToImmutableSortedDictionary(StringComparer.Ordinal);
            }
        }
    }

    internal void CountKept() => Interlocked.Increment(ref kept);

    internal void CountAlready() => Interlocked.Increment(ref already);

    internal void CountRefused(string code)
    {
        lock (gate)
        {
            refused[code] = refused.GetValueOrDefault(code) + 1;
        }
    }
}
