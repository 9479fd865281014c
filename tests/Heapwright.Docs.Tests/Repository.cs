namespace Heapwright.Docs.Tests;

/// <summary>The files of the repository, without what is built or installed.</summary>
internal static class Repository
{
    private static readonly HashSet<string> Left =
    [
        ".git",
        ".vs",
        "artifacts",
        "bin",
        "node_modules",
        "obj",
        "TestResults",
    ];

    /// <summary>The root.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>The paths of all files, from the root.</summary>
    public static IEnumerable<string> Files =>
        Below(new DirectoryInfo(Root)).Order(StringComparer.Ordinal);

    /// <summary>The paths of all pages of documentation, from the root.</summary>
    public static IEnumerable<string> Pages =>
        Files.Where(f =>
            f.EndsWith(".md", StringComparison.Ordinal)
            && (
                !f.Contains('/', StringComparison.Ordinal)
                || f.StartsWith("docs/", StringComparison.Ordinal)
            )
        );

    /// <summary>The text of a file.</summary>
    /// <param name="path">Its path from the root.</param>
    public static string Text(string path) => File.ReadAllText(Path.Combine(Root, path));

    private static IEnumerable<string> Below(DirectoryInfo folder) =>
        folder
            .EnumerateFiles()
            .Select(f => Path.GetRelativePath(Root, f.FullName))
            .Concat(
                folder
                    .EnumerateDirectories()
                    .Where(d => !Left.Contains(d.Name) && d.LinkTarget is null)
                    .SelectMany(Below)
            );

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
