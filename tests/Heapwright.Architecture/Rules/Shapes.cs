namespace Heapwright.Architecture.Rules;

/// <summary>Faults that are found in a type itself: its name, its place in the chain, its state, its docstring.</summary>
internal static class Shapes
{
    // What the stages stand on, in no order; nothing here knows a stage.
    private static readonly string[] Ground = ["Quantities", "Amounts", "Reasons", "Bins"];

    // The chain of architecture.md, from left to right.
    private static readonly string[] Stages =
    [
        "Materials",
        "Mixtures",
        "Simulation",
        "Recipes",
        "BuildPlans",
        "Heaps",
        "Readings",
        "Forecasts",
        "Diagnosis",
        "Advice",
        "Hygiene",
        "FinishedCompost",
        "Lessons",
    ];

    private static readonly string[] Vague =
    [
        "Manager",
        "Helper",
        "Helpers",
        "Util",
        "Utils",
        "Utility",
        "Utilities",
        "Service",
        "Services",
    ];

    /// <summary>Names that say nothing.</summary>
    /// <param name="subject">The type.</param>
    public static IEnumerable<string> VagueName(Subject subject) =>
        Vague.Where(word =>
            subject.Type.Name.Split('`')[0].EndsWith(word, StringComparison.Ordinal)
        );

    /// <summary>Static fields that can change.</summary>
    /// <param name="subject">The type.</param>
    public static IEnumerable<string> GlobalState(Subject subject) =>
        subject.IsCompilerMade
            ? []
            : subject
                .Type.Fields.Where(f => f.IsStatic && !f.IsInitOnly && !f.IsLiteral)
                .Select(f => f.Name);

    /// <summary>A public type that says nothing about itself; the build sees to its members.</summary>
    /// <param name="subject">The type.</param>
    public static IEnumerable<string> NoDocstring(Subject subject) =>
        subject.Type.IsPublic && !subject.Documented.Contains("T:" + subject.Type.FullName)
            ? [subject.Type.FullName]
            : [];

    /// <summary>A folder that has no place in the chain.</summary>
    /// <param name="subject">The type.</param>
    public static IEnumerable<string> OutsideTheChain(Subject subject)
    {
        var stage = Stage(subject.Inside);
        return stage.Length == 0 || Ground.Contains(stage) || Stages.Contains(stage)
            ? []
            : [$"{stage} has no place in the chain; give it one in {nameof(Shapes)}.cs"];
    }

    /// <summary>Types of stages further right.</summary>
    /// <param name="subject">The type.</param>
    public static IEnumerable<string> LooksRight(Subject subject)
    {
        var own = Rank(Stage(subject.Inside));
        if (own is null)
        {
            return [];
        }

        // The last part before a stage's name is Core, for the real assembly and for the sample alike.
        return subject
            .Uses.Types.Select(t => (t.FullName, Space: Places.Namespace(t)))
            .Where(t =>
            {
                var core = t.Space.IndexOf(".Core.", StringComparison.Ordinal);
                return t.Space.StartsWith("Heapwright.", StringComparison.Ordinal)
                    && core >= 0
                    && Rank(Stage(t.Space[(core + 6)..])) > own;
            })
            .Select(t => t.FullName);
    }

    private static string Stage(string inside) => inside.Split('.')[0];

    private static int? Rank(string stage)
    {
        var rank = Array.IndexOf(Stages, stage);
        return rank >= 0 ? rank
            : Ground.Contains(stage) ? -1
            : null;
    }
}
