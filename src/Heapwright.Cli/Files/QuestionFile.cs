using System.Text.Unicode;
using Heapwright.App.Contract;
using Heapwright.App.Texts;

namespace Heapwright.Cli.Files;

/// <summary>Reads a question from a file or from standard input, never more of it than is allowed.</summary>
internal static class QuestionFile
{
    /// <summary>The bytes of a question and the name it has in messages.</summary>
    /// <param name="path">A path, or <c>-</c> for standard input.</param>
    /// <param name="terminal">Where standard input is.</param>
    /// <exception cref="InputProblem">There is no such file, it cannot be read, is too large, empty or not UTF-8.</exception>
    public static (ReadOnlyMemory<byte> Bytes, string Name) Read(string path, ITerminal terminal)
    {
        var name = path == "-" ? Words.Of("cli.standard_input") : path;
        ReadOnlyMemory<byte> bytes;
        try
        {
            if (path != "-" && Directory.Exists(path))
            {
                throw Wrong(name, "input_is_folder");
            }

            using var stream = path == "-" ? terminal.OpenInput() : File.OpenRead(path);
            bytes = ReadUpTo(stream, Input.LargestBytes + 1);
        }
        catch (Exception problem)
            when (problem is FileNotFoundException or DirectoryNotFoundException)
        {
            throw Wrong(name, "input_not_there");
        }
        catch (UnauthorizedAccessException)
        {
            throw Wrong(name, "input_not_allowed");
        }
        catch (Exception problem)
            when (problem is IOException or ArgumentException or NotSupportedException)
        {
            throw Wrong(name, "input_not_readable");
        }

        if (bytes.Length > Input.LargestBytes)
        {
            throw Wrong(name, "input_too_large", Input.LargestBytes);
        }

        if (bytes.Length == 0)
        {
            throw Wrong(name, "input_empty");
        }

        return Utf8.IsValid(bytes.Span) ? (bytes, name) : throw Wrong(name, "input_not_utf8");
    }

    /// <summary>The first bytes of a file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="most">At most so many.</param>
    public static byte[] UpTo(string path, int most)
    {
        using var stream = File.OpenRead(path);
        return ReadUpTo(stream, most).ToArray();
    }

    private static ReadOnlyMemory<byte> ReadUpTo(Stream stream, int most)
    {
        using var kept = new MemoryStream();
        var buffer = new byte[16 * 1024];
        while (kept.Length < most)
        {
            var wanted = (int)Math.Min(buffer.Length, most - kept.Length);
            var count = stream.Read(buffer, 0, wanted);
            if (count == 0)
            {
                break;
            }

            kept.Write(buffer, 0, count);
        }

        return kept.ToArray();
    }

    private static InputProblem Wrong(string name, string code, params object[] values) =>
        new(name, "", Words.Of("cli." + code, null, values));
}
