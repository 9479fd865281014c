namespace Heapwright.App.Contract;

/// <summary>How much one question of <c>simulate</c> may ask for, and whether it may name a file.</summary>
public sealed record SimulateLimits
{
    /// <summary>The most days that are followed.</summary>
    public const int MostDays = 365;

    /// <summary>The most things done to a heap in one question.</summary>
    public const int MostEvents = 100;

    /// <summary>The most members.</summary>
    public required int MostMembers { get; init; }

    /// <summary>The most members times days: what has to be kept in memory grows with it.</summary>
    public required int MostMemberDays { get; init; }

    /// <summary>
    /// Reads the text of a table that the question names, given the name and the question; null where no file may be
    /// named. Throws an <see cref="InputProblem"/> where it cannot be read.
    /// </summary>
    public Func<Input, string, string>? ReadTable { get; init; }

    /// <summary>The limits of the web: no files, and so much that a few callers at once are served.</summary>
    public static SimulateLimits Web { get; } =
        new() { MostMembers = 500, MostMemberDays = 40_000 };

    /// <summary>The limits of the command line.</summary>
    /// <param name="readTable">Reads the tables that a question names.</param>
    public static SimulateLimits CommandLine(Func<Input, string, string>? readTable) =>
        new()
        {
            MostMembers = 2000,
            MostMemberDays = 120_000,
            ReadTable = readTable,
        };
}
