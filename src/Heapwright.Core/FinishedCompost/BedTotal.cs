namespace Heapwright.Core.FinishedCompost;

/// <summary>What all beds get together.</summary>
/// <param name="SquareMetres">m².</param>
/// <param name="Centimetres">cm over the whole area.</param>
/// <param name="Litres">Litres.</param>
/// <param name="Kilograms">kg as it lies.</param>
/// <param name="Nitrogen">kg.</param>
/// <param name="FirstYearNitrogen">kg that plants get in the first year.</param>
/// <param name="Phosphorus">kg of P.</param>
/// <param name="Potassium">kg of K.</param>
public sealed record BedTotal(
    Sampled SquareMetres,
    Sampled Centimetres,
    Sampled Litres,
    Sampled Kilograms,
    Sampled Nitrogen,
    Sampled FirstYearNitrogen,
    Sampled Phosphorus,
    Sampled Potassium
);
