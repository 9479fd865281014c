namespace Heapwright.Core.Diagnosis;

/// <summary>A question and what its answer is expected to settle.</summary>
/// <param name="Question">The question.</param>
/// <param name="Gain">The uncertainty it is expected to take away, in nats summed over the causes.</param>
public sealed record QuestionWorth(SignQuestion Question, double Gain);
