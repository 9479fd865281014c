using Heapwright.Core.Materials;

namespace Heapwright.Core.Hygiene;

/// <summary>What a published study found of heat and weed seed or germs; the words for it stand in App/Texts.</summary>
/// <param name="Id">Its name in the data.</param>
/// <param name="About"><c>weed_seeds</c> or <c>germs</c>.</param>
/// <param name="Band">The temperatures it speaks of; null where it names none.</param>
/// <param name="ToCelsius">Up to which temperature it went, °C; null where it does not say.</param>
/// <param name="Hours">For how long, hours; null where it does not say.</param>
/// <param name="Disagrees">Whether other studies of the list say otherwise.</param>
/// <param name="Source">The key of its source in data/references.bib.</param>
/// <param name="Kind">How it came to be known.</param>
public sealed record StudyResult(
    string Id,
    string About,
    HeatBand? Band,
    double? ToCelsius,
    double? Hours,
    bool Disagrees,
    string Source,
    EvidenceKind Kind
);
