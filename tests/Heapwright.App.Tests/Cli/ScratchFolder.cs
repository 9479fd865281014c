namespace Heapwright.App.Tests.Cli;

/// <summary>A folder of its own for one test, gone afterwards.</summary>
internal sealed class ScratchFolder : IDisposable
{
    /// <summary>The folder.</summary>
    public string Path { get; } = Directory.CreateTempSubdirectory("heapwright-test-").FullName;

    /// <summary>The names of all that is in it, hidden files included.</summary>
    public IEnumerable<string?> Names =>
        Directory
            .EnumerateFileSystemEntries(Path)
            .Select(System.IO.Path.GetFileName)
            .Order(StringComparer.Ordinal);

    /// <summary>The path of a file in it.</summary>
    /// <param name="name">Its name.</param>
    public string File(string name) => System.IO.Path.Combine(Path, name);

    /// <inheritdoc/>
    public void Dispose() => Directory.Delete(Path, recursive: true);
}
