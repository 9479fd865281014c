using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heapwright.Core.Hygiene;

namespace Heapwright.App.Contract;

/// <summary>All that is told of a record, for text and paper.</summary>
internal sealed record HygieneTold(
    HygieneQuestion Question,
    ImmutableArray<RuleFinding> Findings,
    ImmutableArray<ProbeDose> Doses,
    ImmutableArray<StudyComparison> Studies,
    Assumptions Assumptions,
    JsonArray Cautions
);
