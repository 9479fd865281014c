using Heapwright.App.Contract;
using Heapwright.App.Lessons;

namespace Heapwright.Web.Showing;

/// <summary>The last heaps that pages looked back on.</summary>
public sealed class TaughtHeaps()
    : KeptAnswers<TaughtHeap>(
        (input, measures, cancel) => TaughtAnswers.Make(input, SimulateLimits.Web, measures, cancel)
    );
