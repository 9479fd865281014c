namespace Heapwright.App.Ports;

/// <summary>Lets one writer at a time at a heap: whoever changes what is known of it enters first.</summary>
public interface IHeapGate
{
    /// <summary>Waits until nobody else is at the heap, and enters.</summary>
    /// <param name="heapId">The heap.</param>
    /// <param name="cancel">Gives up.</param>
    /// <returns>Leaves the gate when disposed.</returns>
    Task<IDisposable> Enter(Guid heapId, CancellationToken cancel);
}
