using Heapwright.App.Contract;

namespace Heapwright.Cli.Commands;

/// <summary>What a command gives back: the answer, and its drawings where it has any.</summary>
/// <param name="Answer">The answer.</param>
internal sealed record Reply(Answer Answer)
{
    /// <summary>Draws the answer as SVG in UTF-8; called only if asked for. Null if there is nothing to draw.</summary>
    public Func<byte[]>? Svg { get; init; }

    /// <summary>Draws the answer as PDF on <see cref="Call.Paper"/>; called only if asked for. Null if there is nothing to draw.</summary>
    public Func<byte[]>? Pdf { get; init; }

    /// <summary>A reply without drawings.</summary>
    /// <param name="answer">The answer.</param>
    public static implicit operator Reply(Answer answer) => new(answer);
}
