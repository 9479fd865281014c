namespace Heapwright.Cli;

/// <summary>Where a command reads from and writes to; a test puts memory in its place.</summary>
internal interface ITerminal
{
    /// <summary>Standard input.</summary>
    Stream OpenInput();

    /// <summary>The time.</summary>
    DateTimeOffset Now { get; }

    /// <summary>A variable of the environment; null or empty if it is not set.</summary>
    /// <param name="name">Its name.</param>
    string? Variable(string name);

    /// <summary>Writes to standard output, all at once.</summary>
    /// <param name="bytes">UTF-8 text.</param>
    void Write(ReadOnlySpan<byte> bytes);

    /// <summary>Writes one line to standard error.</summary>
    /// <param name="line">The line without its end.</param>
    void Complain(string line);
}
