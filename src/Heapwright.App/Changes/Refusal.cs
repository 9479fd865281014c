using Heapwright.Core.Reasons;

namespace Heapwright.App.Changes;

/// <summary>Why a change is refused: which field, and the sentence for it.</summary>
/// <param name="Field">The field, by its name in files; empty where no single field is meant.</param>
/// <param name="Why">What is wrong and what is allowed.</param>
public sealed record Refusal(string Field, Reason Why)
{
    /// <summary>A refusal.</summary>
    /// <param name="field">The field.</param>
    /// <param name="code">The code of the sentence.</param>
    /// <param name="values">The values in it.</param>
    public static Refusal Of(string field, string code, params object[] values) =>
        new(field, Reason.Of(code, values));
}
