using Heapwright.App.Contract;

namespace Heapwright.Web.Showing;

/// <summary>The last heaps that pages had forecast.</summary>
public sealed class ForecastHeaps()
    : KeptAnswers<MadeForecast>(
        (input, measures, cancel) =>
            ForecastAnswers.Make(
                input,
                SimulateLimits.Web,
                measures: measures,
                cancellation: cancel
            )
    );
