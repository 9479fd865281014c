using System.Globalization;
using Heapwright.App.Contract;
using Heapwright.App.Texts;

namespace Heapwright.Cli.Files;

/// <summary>
/// Writes files so that a reader sees the old one or the whole new one, never a part: each is written beside its place
/// under another name and moved there once all of them are complete.
/// </summary>
internal static class OutputFiles
{
    /// <summary>Refuses a place that cannot hold a file, before any work is done.</summary>
    /// <param name="option">The option that named it.</param>
    /// <param name="path">The path.</param>
    /// <exception cref="InputProblem">A folder, a device, or in a folder that is not there.</exception>
    public static void Check(string option, string path)
    {
        if (Directory.Exists(path) || path.EndsWith('/'))
        {
            throw Wrong(option, path, "output_is_folder");
        }

        var full = Path.GetFullPath(path);
        // Renaming over a device as root would replace the device itself.
        if (
            full.StartsWith("/dev/", StringComparison.Ordinal)
            || full.StartsWith("/proc/", StringComparison.Ordinal)
        )
        {
            throw Wrong(option, path, "output_is_device");
        }

        if (!Directory.Exists(Path.GetDirectoryName(full)))
        {
            throw Wrong(option, path, "output_folder_missing");
        }
    }

    /// <summary>Writes all of the files or none.</summary>
    /// <param name="files">The option that named each file, its path and its bytes.</param>
    /// <exception cref="InputProblem">One cannot be written; none was, unless only the last step, a rename, failed.</exception>
    public static void Write(IReadOnlyList<(string Option, string Path, byte[] Bytes)> files)
    {
        var written = new List<(string Option, string Beside, string Path)>();
        try
        {
            foreach (var (option, path, bytes) in files)
            {
                // A link keeps pointing where it did; its target is what is replaced.
                var target = new FileInfo(path).LinkTarget is null
                    ? path
                    : File.ResolveLinkTarget(path, returnFinalTarget: true)!.FullName;
                var beside = Beside(target);
                written.Add((option, beside, target));
                Attempt(option, path, () => File.WriteAllBytes(beside, bytes));
            }

            foreach (var (option, beside, path) in written)
            {
                Attempt(option, path, () => File.Move(beside, path, overwrite: true));
            }
        }
        finally
        {
            foreach (var (_, beside, _) in written)
            {
                Remove(beside);
            }
        }
    }

    /// <summary>Writes what a stream holds to a file, all of it or nothing.</summary>
    /// <param name="option">The option that named the file.</param>
    /// <param name="path">Its path.</param>
    /// <param name="content">What is written.</param>
    /// <exception cref="InputProblem">It cannot be written.</exception>
    public static void Copy(string option, string path, Stream content)
    {
        var beside = Beside(path);
        try
        {
            Attempt(
                option,
                path,
                () =>
                {
                    using var file = new FileStream(beside, FileMode.CreateNew);
                    content.CopyTo(file);
                    file.Flush(flushToDisk: true);
                }
            );
            Attempt(option, path, () => File.Move(beside, path, overwrite: true));
        }
        finally
        {
            Remove(beside);
        }
    }

    private static string Beside(string path)
    {
        var full = Path.GetFullPath(path);
        var name = string.Create(
            CultureInfo.InvariantCulture,
            $".heapwright-{Guid.NewGuid():N}.part"
        );
        return Path.Combine(Path.GetDirectoryName(full)!, name);
    }

    private static void Attempt(string option, string path, Action step)
    {
        try
        {
            step();
        }
        catch (UnauthorizedAccessException)
        {
            throw Wrong(option, path, "output_not_allowed");
        }
        catch (IOException)
        {
            throw Wrong(option, path, "output_not_written");
        }
    }

    private static void Remove(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            // Its folder went away meanwhile: then it is gone too.
        }
    }

    private static InputProblem Wrong(string option, string path, string code) =>
        new(option, path, Words.Of("cli." + code));
}
