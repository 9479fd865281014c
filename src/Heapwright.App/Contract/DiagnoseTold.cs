using System.Collections.Immutable;
using Heapwright.Core.Diagnosis;

namespace Heapwright.App.Contract;

/// <summary>What an answer of <c>diagnose</c> tells.</summary>
/// <param name="Found">What was found.</param>
/// <param name="Listed">The causes that are listed, the most probable first.</param>
/// <param name="Amounts">The amounts that could be worked out.</param>
/// <param name="Words">Its words.</param>
/// <param name="Clashes">What in the question does not fit together.</param>
internal sealed record DiagnoseTold(
    DiagnosisAnswer Found,
    ImmutableArray<CauseFound> Listed,
    DiagnoseAmounts Amounts,
    DiagnoseWording Words,
    IReadOnlyList<string> Clashes
)
{
    /// <summary>What is at hand to mend causes with, by the id of the cause; empty where stock is not known.</summary>
    public IReadOnlyDictionary<string, StockAmounts> FromStock { get; init; } =
        ImmutableDictionary<string, StockAmounts>.Empty;

    /// <summary>What does not fit together, in words.</summary>
    public IEnumerable<string> Contradictions =>
        Clashes.Concat(
            Found.Contradictions.Select(c =>
                Words.Say("seldom_together", Words.Fact(c.One), Words.Fact(c.Other))
            )
        );

    /// <summary>What to do properly, with the amount where it is known.</summary>
    /// <param name="cause">The id of the cause.</param>
    public string Properly(string cause) =>
        Amounts.Sentence(cause) is { } amount
            ? $"{Words.Say(cause + "_properly")} ({amount})"
            : Words.Say(cause + "_properly");
}
