namespace Heapwright.Core.Diagnosis;

/// <summary>That something was done against a cause before, and whether it helped.</summary>
/// <param name="model">The model.</param>
/// <param name="cause">The cause that was acted on.</param>
/// <param name="outcome">What came of it.</param>
public sealed class TriedFact(SignModel model, string cause, SignOutcome outcome)
    : SignFact(TriedField, cause)
{
    /// <summary>The place of such facts, which is no field of a question.</summary>
    public const string TriedField = "tried";

    private readonly int given = model.Given(cause);

    /// <summary>Whether it helped.</summary>
    public bool Helped => outcome.Answer == "yes";

    internal override bool DependsOn(int given) => given == this.given;

    // Only the ratio counts; scaled so that it is no more than one.
    internal override double Likelihood(ReadOnlySpan<sbyte> holding)
    {
        var most = Math.Max(1, outcome.Times);
        foreach (var held in holding)
        {
            if (held == given)
            {
                return outcome.Times / most;
            }
        }

        return 1 / most;
    }
}
