namespace Heapwright.Cli;

/// <summary>How a command ends; there are no other numbers.</summary>
internal static class ExitStatus
{
    /// <summary>Answered.</summary>
    public const int Answered = 0;

    /// <summary>Answered "no": it cannot be met, and the answer says why.</summary>
    public const int AnsweredNo = 1;

    /// <summary>The question is wrong, or could not be worked on; nothing was written.</summary>
    public const int Refused = 2;
}
