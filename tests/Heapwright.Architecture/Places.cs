using System.Xml.Linq;
using Mono.Cecil;

namespace Heapwright.Architecture;

/// <summary>The places of the architecture and their types, in the real assemblies and in the wrong sample.</summary>
internal static class Places
{
    private const string Sample = "Heapwright.Architecture.WrongSample";

    /// <summary>The places, longest name first so that Storage.Sqlite is not taken for Storage.</summary>
    public static readonly string[] All =
    [
        "Storage.Postgres",
        "Storage.Sqlite",
        "Numerics",
        "Storage",
        "Cluster",
        "Core",
        "App",
        "Web",
        "Cli",
    ];

    /// <summary>The types of a place as built.</summary>
    /// <param name="place">Such as <c>Core</c>.</param>
    public static IReadOnlyList<Subject> Real(string place) =>
        // The command line's assembly is what a person types.
        Read(place == "Cli" ? "heapwright" : "Heapwright." + place, "Heapwright." + place, place);

    /// <summary>The types of the sample that play a place.</summary>
    /// <param name="place">Such as <c>Core</c>.</param>
    public static IReadOnlyList<Subject> Wrong(string place) =>
        [.. Read(Sample, Sample + "." + place, place).Where(s => s.Inside != "?")];

    /// <summary>The place that a type belongs to, or null for a type that is not ours.</summary>
    /// <param name="type">The type.</param>
    public static string? Of(TypeReference type) =>
        All.FirstOrDefault(place => IsIn(Namespace(type), "Heapwright." + place));

    /// <summary>The namespace of a type or, for a nested one, of the type around it.</summary>
    /// <param name="type">The type.</param>
    public static string Namespace(TypeReference type)
    {
        while (type.DeclaringType is not null)
        {
            type = type.DeclaringType;
        }

        return type.Namespace;
    }

    /// <summary>Whether a namespace is another one or lies inside it.</summary>
    /// <param name="space">The namespace.</param>
    /// <param name="outer">The other one.</param>
    public static bool IsIn(string space, string outer) =>
        space == outer || space.StartsWith(outer + ".", StringComparison.Ordinal);

    /// <summary>The assembly of a name beside the tests.</summary>
    /// <param name="name">The name without its ending.</param>
    public static AssemblyDefinition Assembly(string name) =>
        AssemblyDefinition.ReadAssembly(
            Path.Combine(AppContext.BaseDirectory, name + ".dll"),
            new ReaderParameters { InMemory = true }
        );

    private static List<Subject> Read(string assembly, string root, string place)
    {
        var documented = Documented(assembly);
        var subjects = new List<Subject>();
        foreach (var type in Assembly(assembly).MainModule.GetTypes())
        {
            var space = Namespace(type);
            // Of two places whose names begin alike the longer one owns the type.
            var owned =
                IsIn(space, root)
                && !All.Any(other =>
                    other.Length > place.Length
                    && other.StartsWith(place + ".", StringComparison.Ordinal)
                    && IsIn(space, root[..^place.Length] + other)
                );
            var program =
                space.Length == 0 && type.FullName.StartsWith("Program", StringComparison.Ordinal);
            if (owned)
            {
                subjects.Add(
                    new Subject(
                        type,
                        space.Length > root.Length ? space[(root.Length + 1)..] : "",
                        TypeUses.Of(type),
                        documented
                    )
                );
            }
            else if (program)
            {
                subjects.Add(new Subject(type, "?", TypeUses.Of(type), documented));
            }
        }

        return subjects;
    }

    private static HashSet<string> Documented(string assembly)
    {
        var path = Path.Combine(AppContext.BaseDirectory, assembly + ".xml");
        return File.Exists(path)
            ?
            [
                .. XDocument
                    .Load(path)
                    .Descendants("member")
                    .Select(m => m.Attribute("name")!.Value),
            ]
            : [];
    }
}
