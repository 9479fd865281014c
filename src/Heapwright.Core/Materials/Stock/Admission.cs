using System.Collections.Immutable;
using Heapwright.Core.Reasons;

namespace Heapwright.Core.Materials.Stock;

/// <summary>The advice on putting a material into a heap.</summary>
/// <param name="Advice">The advice; nothing is ever taken out of a person's plan because of it.</param>
/// <param name="Reasons">Why; never empty unless it may go in without more ado.</param>
public sealed record Admission(AdmissionAdvice Advice, ImmutableArray<Reason> Reasons);
