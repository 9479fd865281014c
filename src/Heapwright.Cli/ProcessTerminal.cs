using System.Text;

namespace Heapwright.Cli;

/// <summary>The standard streams of this process.</summary>
internal sealed class ProcessTerminal : ITerminal
{
    /// <inheritdoc/>
    public Stream OpenInput() => Console.OpenStandardInput();

    /// <inheritdoc/>
    public DateTimeOffset Now => TimeProvider.System.GetUtcNow();

    /// <inheritdoc/>
    public string? Variable(string name) => Environment.GetEnvironmentVariable(name);

    /// <inheritdoc/>
    public void Write(ReadOnlySpan<byte> bytes)
    {
        using var output = Console.OpenStandardOutput();
        output.Write(bytes);
    }

    /// <inheritdoc/>
    public void Complain(string line)
    {
        try
        {
            using var error = Console.OpenStandardError();
            error.Write(Encoding.UTF8.GetBytes(line + "\n"));
        }
        catch (IOException)
        {
            // Nobody is left to tell; the exit status still says it.
        }
    }
}
