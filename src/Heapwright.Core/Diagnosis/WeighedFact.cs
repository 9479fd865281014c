namespace Heapwright.Core.Diagnosis;

/// <summary>A fact and what it does to the odds of a cause.</summary>
/// <param name="Fact">The fact.</param>
/// <param name="Weight">What it adds to the logarithm of the odds.</param>
/// <param name="At">Its place among the facts.</param>
internal sealed record WeighedFact(SignFact Fact, double Weight, int At)
{
    /// <summary>Whether it is the trouble for which the heap is looked at.</summary>
    public bool IsWorry => Fact.Place == "worry";

    /// <summary>The weightier first, for or against; of equal ones the one that was told first.</summary>
    public static int Compare(WeighedFact one, WeighedFact other) =>
        Math.Abs(other.Weight).CompareTo(Math.Abs(one.Weight)) is not 0 and var order
            ? order
            : one.At.CompareTo(other.At);
}
