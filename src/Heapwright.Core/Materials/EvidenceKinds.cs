namespace Heapwright.Core.Materials;

/// <summary>The words for <see cref="EvidenceKind"/> in files and answers.</summary>
public static class EvidenceKinds
{
    /// <summary>printed, from_memory, derived or estimate.</summary>
    /// <param name="kind">The kind.</param>
    public static string Word(EvidenceKind kind) =>
        kind switch
        {
            EvidenceKind.Printed => "printed",
            EvidenceKind.FromMemory => "from_memory",
            EvidenceKind.Derived => "derived",
            _ => "estimate",
        };

    /// <summary>The kind a word stands for.</summary>
    /// <param name="word">printed, from_memory, derived or estimate.</param>
    /// <exception cref="ArgumentOutOfRangeException">Another word.</exception>
    public static EvidenceKind Parse(string word) =>
        word switch
        {
            "printed" => EvidenceKind.Printed,
            "from_memory" => EvidenceKind.FromMemory,
            "derived" => EvidenceKind.Derived,
            "estimate" => EvidenceKind.Estimate,
            _ => throw new ArgumentOutOfRangeException(
                nameof(word),
                word,
                "printed, from_memory, derived or estimate is allowed"
            ),
        };
}
