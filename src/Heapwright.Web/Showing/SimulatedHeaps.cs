using Heapwright.App.Contract;

namespace Heapwright.Web.Showing;

/// <summary>The last heaps that pages had simulated.</summary>
public sealed class SimulatedHeaps()
    : KeptAnswers<HeapView>(
        (input, _, cancel) =>
            HeapView.Of(
                SimulateAnswers.Answer(input, SimulateLimits.Web, cancellation: cancel).Json
            )
    );
