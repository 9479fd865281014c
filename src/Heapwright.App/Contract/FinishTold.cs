using System.Text.Json.Nodes;
using Heapwright.Core.FinishedCompost;

namespace Heapwright.App.Contract;

/// <summary>An answer of <c>finish</c> with all that its text needs.</summary>
internal sealed record FinishTold(
    FinishQuestion Question,
    FinishAnswer Answer,
    FinishReader Reader,
    Assumptions Assumptions,
    IReadOnlyList<(string Field, string Text)> Missing,
    IReadOnlyList<string> Notes,
    JsonArray Cautions
)
{
    /// <summary>The uses that waiting opens.</summary>
    public IEnumerable<UseFinding> Awaited => Answer.Uses.Where(IsAwaited);

    /// <summary>Whether waiting opens a use; one that is ripe enough already waits for a test, not for a day.</summary>
    /// <param name="use">The use.</param>
    public static bool IsAwaited(UseFinding use) =>
        use.Verdict is UseVerdict.NotYet or UseVerdict.CannotTell
        && use.WaitDays is { Typical: > 0 };

    /// <summary>The one of them that opens last; null where there is none.</summary>
    public UseFinding? Last => Awaited.MaxBy(u => u.WaitDays!.Value.Typical);
}
