namespace Heapwright.Architecture.Rules;

/// <summary>One thing that the types of one place may not do.</summary>
/// <param name="Id">Its name, such as <c>core_reads_no_clock</c>.</param>
/// <param name="Place">The place it holds for.</param>
/// <param name="Faults">What is wrong with a type, in a few words each; nothing if all is well.</param>
/// <param name="Caught">The types of the wrong sample that it must reject, by name.</param>
internal sealed record Rule(
    string Id,
    string Place,
    Func<Subject, IEnumerable<string>> Faults,
    params string[] Caught
)
{
    /// <summary>Holds the rule against many types.</summary>
    /// <param name="subjects">The types.</param>
    /// <returns>The type a person wrote, and what is wrong with it.</returns>
    public IReadOnlyList<(string Type, string Fault)> Against(IEnumerable<Subject> subjects) =>
        [
            .. subjects
                .Where(s => !s.Written.Name.StartsWith('<') || s.Written.Name == "<Program>$")
                .SelectMany(s => Faults(s).Select(fault => (s.Written.Name, fault)))
                .Distinct(),
        ];

    /// <inheritdoc/>
    public override string ToString() => Id;
}
