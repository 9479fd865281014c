using System.Text;
using Heapwright.Cli;

namespace Heapwright.App.Tests.Cli;

/// <summary>A terminal in memory.</summary>
internal sealed class MemoryTerminal : ITerminal
{
    private readonly MemoryStream output = new();

    /// <summary>What stands on standard input.</summary>
    public Stream Input { get; init; } = Stream.Null;

    /// <summary>What was written to standard output.</summary>
    public string Output => new UTF8Encoding(false, true).GetString(output.ToArray());

    /// <summary>The lines written to standard error.</summary>
    public List<string> Complaints { get; } = [];

    /// <inheritdoc/>
    public Stream OpenInput() => Input;

    /// <summary>The variables of the environment.</summary>
    public Dictionary<string, string> Variables { get; } = new(StringComparer.Ordinal);

    /// <inheritdoc/>
    public DateTimeOffset Now { get; init; } = new(2026, 5, 1, 12, 0, 0, TimeSpan.Zero);

    /// <inheritdoc/>
    public string? Variable(string name) => Variables.GetValueOrDefault(name);

    /// <inheritdoc/>
    public void Write(ReadOnlySpan<byte> bytes) => output.Write(bytes);

    /// <inheritdoc/>
    public void Complain(string line) => Complaints.Add(line);
}
