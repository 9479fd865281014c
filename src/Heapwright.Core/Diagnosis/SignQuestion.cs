using System.Collections.Immutable;

namespace Heapwright.Core.Diagnosis;

/// <summary>A question that can be asked.</summary>
/// <param name="Code">Its code.</param>
/// <param name="Field">The field that it fills.</param>
/// <param name="Options">The answers: words of the field; for a field of several words those that are looked for.</param>
/// <param name="Ease">How readily it is answered beside the heap, from 0 to 1.</param>
public sealed record SignQuestion(
    string Code,
    string Field,
    ImmutableArray<string> Options,
    double Ease
);
