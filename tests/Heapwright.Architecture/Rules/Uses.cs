using Mono.Cecil;

namespace Heapwright.Architecture.Rules;

/// <summary>Faults that are found in what a type refers to.</summary>
internal static class Uses
{
    private static readonly HashSet<string> FileTypes =
    [
        "System.IO.Directory",
        "System.IO.DirectoryInfo",
        "System.IO.DriveInfo",
        "System.IO.File",
        "System.IO.FileInfo",
        "System.IO.FileStream",
        "System.IO.FileSystemWatcher",
        "System.IO.Path",
        "System.IO.RandomAccess",
    ];

    private static readonly HashSet<string> ClockTypes =
    [
        "System.Diagnostics.Stopwatch",
        "System.TimeProvider",
        "NodaTime.SystemClock",
    ];

    private static readonly HashSet<string> ClockMethods =
    [
        "System.DateTime::get_Now",
        "System.DateTime::get_UtcNow",
        "System.DateTime::get_Today",
        "System.DateTimeOffset::get_Now",
        "System.DateTimeOffset::get_UtcNow",
        "System.Environment::get_TickCount",
        "System.Environment::get_TickCount64",
    ];

    private static readonly HashSet<string> Unseeded =
    [
        "System.Random::get_Shared",
        "System.Guid::NewGuid",
        "System.Guid::CreateVersion7",
    ];

    // The compiler writes this one into every iterator.
    private const string Iterator = "System.Environment::get_CurrentManagedThreadId";

    /// <summary>Types of our own that lie elsewhere than in these places.</summary>
    /// <param name="places">The places allowed.</param>
    public static Func<Subject, IEnumerable<string>> OursOutside(params string[] places) =>
        s =>
            s.Uses.Types.Where(t => Places.Of(t) is { } place && !places.Contains(place))
                .Select(t => t.FullName);

    /// <summary>Types of namespaces.</summary>
    /// <param name="spaces">The namespaces, with all inside them.</param>
    public static Func<Subject, IEnumerable<string>> Namespaces(params string[] spaces) =>
        s =>
            s.Uses.Types.Where(t => spaces.Any(space => Places.IsIn(Places.Namespace(t), space)))
                .Select(t => t.FullName);

    /// <summary>Types of packages: assemblies that are neither ours nor the platform's nor allowed.</summary>
    /// <param name="allowed">The assemblies allowed.</param>
    public static Func<Subject, IEnumerable<string>> PackagesBut(params string[] allowed) =>
        s =>
            s.Uses.Types.Where(t =>
                    t.Scope is AssemblyNameReference { Name: var name }
                    && name is not ("mscorlib" or "netstandard")
                    && !name.StartsWith("System.", StringComparison.Ordinal)
                    && !name.StartsWith("Heapwright.", StringComparison.Ordinal)
                    && !allowed.Contains(name)
                )
                .Select(t => t.FullName);

    /// <summary>Files and folders.</summary>
    /// <param name="subject">The type.</param>
    public static IEnumerable<string> Files(Subject subject) =>
        subject.Uses.Types.Select(t => t.FullName).Where(FileTypes.Contains);

    /// <summary>The clock of the machine.</summary>
    /// <param name="subject">The type.</param>
    public static IEnumerable<string> Clock(Subject subject) =>
        subject
            .Uses.Types.Select(t => t.FullName)
            .Where(ClockTypes.Contains)
            .Concat(Called(subject, ClockMethods.Contains));

    /// <summary>The clock of the machine, unless through the one that a caller hands in.</summary>
    /// <param name="subject">The type.</param>
    public static IEnumerable<string> ClockButHandedIn(Subject subject) =>
        Clock(subject).Where(name => name != "System.TimeProvider");

    /// <summary>Environment, console and processes.</summary>
    /// <param name="subject">The type.</param>
    public static IEnumerable<string> Surroundings(Subject subject) =>
        Called(
            subject,
            name =>
                name != Iterator
                && (
                    name.StartsWith("System.Environment::", StringComparison.Ordinal)
                    || name.StartsWith("System.Console::", StringComparison.Ordinal)
                    || name.StartsWith("System.Diagnostics.Process::", StringComparison.Ordinal)
                )
        );

    /// <summary>Randomness that cannot be had again.</summary>
    /// <param name="subject">The type.</param>
    public static IEnumerable<string> UnseededRandomness(Subject subject) =>
        Called(subject, Unseeded.Contains)
            .Concat(
                subject
                    .Uses.Methods.Where(m =>
                        m.DeclaringType.FullName == "System.Random"
                        && m.Name == ".ctor"
                        && m.Parameters.Count == 0
                    )
                    .Select(_ => "new System.Random()")
            )
            .Concat(Namespaces("System.Security.Cryptography")(subject));

    /// <summary>Sums and products of quantities with units; a drawing lays out lengths, which is no physics.</summary>
    /// <param name="subject">The type.</param>
    public static IEnumerable<string> Arithmetic(Subject subject) =>
        (Places.IsIn(subject.Inside, "Drawings") ? [] : subject.Uses.Methods)
            .Where(m =>
                Places.IsIn(Places.Namespace(m.DeclaringType), "UnitsNet")
                && m.Name is "op_Addition" or "op_Subtraction" or "op_Multiply" or "op_Division"
            )
            .Select(m => m.FullName);

    /// <summary>Lets only Program, where the parts are put together, do it.</summary>
    /// <param name="faults">What nobody else may do.</param>
    public static Func<Subject, IEnumerable<string>> ButInProgram(
        Func<Subject, IEnumerable<string>> faults
    ) => s => s.Written.Name is "Program" or "<Program>$" ? [] : faults(s);

    private static IEnumerable<string> Called(Subject subject, Func<string, bool> wrong) =>
        subject.Uses.Methods.Select(m => $"{m.DeclaringType.FullName}::{m.Name}").Where(wrong);
}
