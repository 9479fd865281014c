using System.Text;
using Heapwright.App.Contract;
using Heapwright.App.Texts;

namespace Heapwright.Cli.Files;

/// <summary>Reads a table that a question names, never more of it than is allowed.</summary>
internal static class TableFile
{
    /// <summary>
    /// The text of the table. A path that does not begin at the root is looked for from where the program was started, and
    /// then beside the question.
    /// </summary>
    /// <param name="question">The value that names it.</param>
    /// <param name="path">The path.</param>
    /// <exception cref="InputProblem">There is no such file, it cannot be read, is too large or not UTF-8.</exception>
    public static string Read(Input question, string path)
    {
        var place = path;
        if (!File.Exists(path) && Path.GetDirectoryName(question.File) is { Length: > 0 } folder)
        {
            var beside = Path.Combine(folder, path);
            place = File.Exists(beside) ? beside : path;
        }

        try
        {
            if (Directory.Exists(place))
            {
                throw Wrong(question, "is_folder", path);
            }

            var size = new FileInfo(place).Length;
            if (size > Input.LargestBytes)
            {
                throw Wrong(question, "too_large", path, Input.LargestBytes);
            }

            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(
                QuestionFile.UpTo(place, Input.LargestBytes + 1)
            );
        }
        catch (Exception problem)
            when (problem is FileNotFoundException or DirectoryNotFoundException)
        {
            throw Wrong(question, "not_there", path);
        }
        catch (UnauthorizedAccessException)
        {
            throw Wrong(question, "not_allowed", path);
        }
        catch (DecoderFallbackException)
        {
            throw Wrong(question, "not_utf8", path);
        }
        catch (Exception problem)
            when (problem is IOException or ArgumentException or NotSupportedException)
        {
            throw Wrong(question, "not_readable", path);
        }
    }

    private static InputProblem Wrong(Input question, string code, params object[] values) =>
        question.Problem(Words.Of("cli.table_" + code, null, values));
}
