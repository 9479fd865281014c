using System.Collections.Immutable;

namespace Heapwright.Cli.Commands;

/// <summary>Every question that the command line can ask, in the order of the help. A new one is one entry here.</summary>
internal static class CommandTable
{
    /// <summary>The commands.</summary>
    public static ImmutableArray<Command> All { get; } = [];
}
