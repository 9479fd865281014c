using Heapwright.Core.Mixtures;

namespace Heapwright.Core.BuildPlans;

/// <summary>What is known when the layers have been arranged and are written down.</summary>
/// <param name="Question">What was asked.</param>
/// <param name="Stuffs">The stuff.</param>
/// <param name="Heaping">The bin and the built factor.</param>
/// <param name="Pressed">Height after treading over height laid loose; 1 if nothing is trodden in.</param>
/// <param name="Arrangement">The layers.</param>
/// <param name="Mixture">The mixture with its water.</param>
/// <param name="Water">Litres in all.</param>
/// <param name="TargetMoisture">The moisture dry stuff is brought to, % of wet mass.</param>
internal sealed record PlanFacts(
    BuildQuestion Question,
    IReadOnlyList<Stuff> Stuffs,
    Heaping Heaping,
    double Pressed,
    Arrangement Arrangement,
    Mixture Mixture,
    double Water,
    double TargetMoisture
);
