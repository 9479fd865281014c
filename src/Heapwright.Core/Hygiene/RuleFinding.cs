using System.Collections.Immutable;

namespace Heapwright.Core.Hygiene;

/// <summary>What a record shows of one rule.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Verdict">The verdict.</param>
/// <param name="Ways">The ways to read the rule that were tried; none where it is not applicable or asks for a dose.</param>
/// <param name="Shown">What the record shows.</param>
public sealed record RuleFinding(
    HygieneRule Rule,
    RuleVerdict Verdict,
    ImmutableArray<RuleWay> Ways,
    RuleShown Shown
);
