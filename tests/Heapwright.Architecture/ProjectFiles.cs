using System.Xml.Linq;

namespace Heapwright.Architecture;

/// <summary>What project files refer to, whether or not the code makes use of it.</summary>
internal static class ProjectFiles
{
    // From the drawing in architecture.md; Web and Cli put the parts together, so they may see them all.
    private static readonly Dictionary<string, string[]> MayReferTo = new(StringComparer.Ordinal)
    {
        ["Numerics"] = [],
        ["Core"] = ["Numerics"],
        ["App"] = ["Core"],
        ["Storage"] = ["App"],
        ["Storage.Sqlite"] = ["Storage"],
        ["Storage.Postgres"] = ["Storage"],
        ["Cluster"] = ["App"],
        ["Web"] = ["App", "Storage", "Storage.Sqlite", "Storage.Postgres", "Cluster"],
        ["Cli"] = ["App", "Storage", "Storage.Sqlite", "Storage.Postgres", "Cluster"],
    };

    /// <summary>The root of the repository.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>The places that have a folder under src/.</summary>
    public static IEnumerable<string> Present =>
        Directory
            .EnumerateDirectories(Path.Combine(Root, "src"))
            .Select(folder => Path.GetFileName(folder)["Heapwright.".Length..]);

    /// <summary>The project file of a place.</summary>
    /// <param name="place">Such as <c>Core</c>.</param>
    public static string Of(string place) =>
        Path.Combine(Root, "src", "Heapwright." + place, $"Heapwright.{place}.csproj");

    /// <summary>The projects a file refers to although its place may not.</summary>
    /// <param name="file">The project file.</param>
    /// <param name="place">The place to judge it as.</param>
    public static IEnumerable<string> WrongReferences(string file, string place) =>
        XDocument
            .Load(file)
            .Descendants("ProjectReference")
            .Select(r => Path.GetFileNameWithoutExtension(r.Attribute("Include")!.Value))
            .Where(name => !MayReferTo[place].Contains(name["Heapwright.".Length..]));

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Heapwright.slnx")))
        {
            folder =
                folder.Parent ?? throw new DirectoryNotFoundException("no Heapwright.slnx above");
        }

        return folder.FullName;
    }
}
