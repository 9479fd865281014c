using System.Collections.Immutable;

namespace Heapwright.Core.Diagnosis;

/// <summary>What the facts say.</summary>
/// <param name="Causes">Every cause, the most probable first.</param>
/// <param name="Healthy">The chance that nothing needs changing.</param>
/// <param name="AskNext">The questions that are worth most, the best first.</param>
/// <param name="Contradictions">Pairs of facts that seldom go together.</param>
public sealed record DiagnosisAnswer(
    ImmutableArray<CauseFound> Causes,
    double Healthy,
    ImmutableArray<QuestionWorth> AskNext,
    ImmutableArray<FactPair> Contradictions
);
