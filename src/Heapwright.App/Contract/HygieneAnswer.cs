using Heapwright.App.BuildSheets;
using Heapwright.App.Texts;

namespace Heapwright.App.Contract;

/// <summary>The answer to <c>hygiene</c>, with the record for printing.</summary>
/// <param name="Answer">The answer.</param>
/// <param name="Pdf">Prints the record: on which paper, made when, in which measures.</param>
public sealed record HygieneAnswer(
    Answer Answer,
    Func<PaperSize, DateTimeOffset, Measures, byte[]> Pdf
);
