namespace Heapwright.Core.Diagnosis;

/// <summary>What the answer to "did it help?" says of the cause that was acted on.</summary>
/// <param name="Answer"><c>yes</c> or <c>no</c>.</param>
/// <param name="Times">How many times more often the answer is met where the cause still holds, or holds again; above 0.</param>
/// <param name="Days">Days for which it counts.</param>
public sealed record SignOutcome(string Answer, double Times, double Days);
