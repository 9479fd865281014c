using System.Collections.Immutable;
using Heapwright.App.Outlooks;

namespace Heapwright.App.Ports;

/// <summary>Keeps forecasts as they were made.</summary>
public interface IForecastStore
{
    /// <summary>
    /// Keeps a forecast. It takes the place of the last one of the heap where that was made with the same entries less than
    /// a day before; all others stay.
    /// </summary>
    /// <param name="forecast">The forecast.</param>
    /// <param name="cancel">Gives up.</param>
    Task Keep(KeptForecast forecast, CancellationToken cancel);

    /// <summary>The last forecast of each heap that has one, by heap.</summary>
    /// <param name="cancel">Gives up.</param>
    Task<ImmutableDictionary<Guid, KeptForecast>> Latest(CancellationToken cancel);

    /// <summary>All forecasts of a heap, the oldest first.</summary>
    /// <param name="heapId">The heap.</param>
    /// <param name="cancel">Gives up.</param>
    Task<ImmutableArray<KeptForecast>> Of(Guid heapId, CancellationToken cancel);
}
