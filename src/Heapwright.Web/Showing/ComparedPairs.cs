using Heapwright.App.Contract;
using Heapwright.App.Lessons;

namespace Heapwright.Web.Showing;

/// <summary>The last heaps that pages held against each other.</summary>
public sealed class ComparedPairs()
    : KeptAnswers<ComparedHeaps>(
        (input, measures, cancel) =>
            ComparisonAnswers.Make(input, SimulateLimits.Web, measures, cancel)
    );
