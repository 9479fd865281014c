using System.Collections.Immutable;
using Heapwright.Core.Diagnosis;
using Heapwright.Core.Materials;

namespace Heapwright.App.Contract;

/// <summary>What was asked of <c>diagnose</c>.</summary>
/// <param name="Facts">What is known.</param>
/// <param name="Answered">The fields that were answered, and those that nobody knows.</param>
/// <param name="Settled">Words of signs that were told, looked for, or not known, as <see cref="Sign"/> has them.</param>
/// <param name="Materials">The materials of the heap.</param>
/// <param name="Heap">What is known of the heap for mending it.</param>
/// <param name="IsSizedByWord">Whether its size is known by a word alone.</param>
/// <param name="Seed">The seed of samples.</param>
/// <param name="Clashes">What in the question does not fit together, in words.</param>
internal sealed record DiagnoseQuestion(
    ImmutableArray<SignFact> Facts,
    IReadOnlySet<string> Answered,
    IReadOnlySet<string> Settled,
    ImmutableArray<Material> Materials,
    HeapToMend Heap,
    bool IsSizedByWord,
    ulong Seed,
    IReadOnlyList<string> Clashes
)
{
    /// <summary>The questions that are still open, with the options that are.</summary>
    /// <param name="all">All questions.</param>
    public IEnumerable<SignQuestion> Open(IEnumerable<SignQuestion> all) =>
        from question in all
        where !Answered.Contains(question.Field) && !Answered.Contains(question.Code)
        let isTold = question.Options.Any(o => IsTold(question.Field, o))
        let open = question with
        {
            Options = [.. question.Options.Where(o => !Settled.Contains(Sign(question.Field, o)))],
        }
        where !isTold && open.Options.Length > 0
        select open;

    /// <summary>A sign with its field as one text.</summary>
    /// <param name="field">The field.</param>
    /// <param name="word">The word in it.</param>
    public static string Sign(string field, string word) => field + " " + word;

    private bool IsTold(string field, string word) =>
        Facts.OfType<WordFact>().Any(f => !f.IsAbsence && f.Place == field && f.Word == word);
}
