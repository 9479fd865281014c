using Heapwright.App.Texts;

namespace Heapwright.Cli;

/// <summary>The line for a fault of our own, and where its details went if they were wanted.</summary>
internal static class FaultReport
{
    /// <summary>One line; with HEAPWRIGHT_DEBUG set the details are kept in a file that the line names.</summary>
    /// <param name="fault">What was thrown.</param>
    public static string Of(Exception fault)
    {
        var line = OneLine(Words.Of("cli.fault", null, fault.GetType().Name, fault.Message));
        return string.IsNullOrEmpty(Environment.GetEnvironmentVariable("HEAPWRIGHT_DEBUG"))
            ? line + " " + Words.Of("cli.fault_debug")
            : line + " " + Keep(fault);
    }

    private static string Keep(Exception fault)
    {
        var path = Path.Combine(Path.GetTempPath(), $"heapwright-{Guid.NewGuid():N}.log");
        try
        {
            File.WriteAllText(path, fault.ToString());
            return Words.Of("cli.fault_kept", null, path);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return Words.Of("cli.fault_not_kept");
        }
    }

    private static string OneLine(string text) =>
        string.Join(' ', text.Split(['\r', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
