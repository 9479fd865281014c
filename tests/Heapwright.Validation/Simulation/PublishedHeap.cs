namespace Heapwright.Validation.Simulation;

/// <summary>What was published of a heap: null where the source does not say.</summary>
/// <param name="Source">Key of data/references.bib.</param>
/// <param name="Heap">The set-up as far as the source describes it; what it leaves out is set by us and said.</param>
/// <param name="Heats">Whether it reached 55 °C.</param>
/// <param name="Peak">Highest temperature, °C.</param>
/// <param name="First55">Days to 55 °C.</param>
/// <param name="FinalRatio">C:N at the end.</param>
/// <param name="DryLoss">Dry matter lost, %.</param>
public sealed record PublishedHeap(
    string Source,
    HeapCase Heap,
    bool? Heats = null,
    double? Peak = null,
    double? First55 = null,
    double? FinalRatio = null,
    double? DryLoss = null
);
