namespace Heapwright.Core.Diagnosis;

/// <summary>A row of the table of signs.</summary>
/// <param name="Field">The field of the question, such as <c>signs.smell</c>.</param>
/// <param name="Word">The word in it.</param>
/// <param name="Given">A cause, <c>stalled</c>, a class of heat such as <c>heat:cold</c>, or <c>*</c> for none.</param>
/// <param name="Effect">How it works.</param>
/// <param name="Value">The chance, share or factor.</param>
/// <param name="Sources">Keys of data/references.bib of publications that connect the two; the value is never theirs.</param>
public sealed record SignRow(
    string Field,
    string Word,
    string Given,
    SignEffect Effect,
    double Value,
    IReadOnlyList<string> Sources
);
