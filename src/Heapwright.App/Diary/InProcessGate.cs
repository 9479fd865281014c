using System.Collections.Concurrent;
using Heapwright.App.Ports;

namespace Heapwright.App.Diary;

/// <summary>The gates of all heaps within this process.</summary>
public sealed class InProcessGate : IHeapGate
{
    private readonly ConcurrentDictionary<Guid, SemaphoreSlim> gates = new();

    /// <inheritdoc/>
    public async Task<IDisposable> Enter(Guid heapId, CancellationToken cancel)
    {
        var gate = gates.GetOrAdd(heapId, _ => new SemaphoreSlim(1, 1));
        await gate.WaitAsync(cancel);
        return new Inside(gate);
    }

    private sealed class Inside(SemaphoreSlim gate) : IDisposable
    {
        private int left;

        public void Dispose()
        {
            if (Interlocked.Exchange(ref left, 1) == 0)
            {
                gate.Release();
            }
        }
    }
}
