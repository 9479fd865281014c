using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Changes;
using Heapwright.App.Contract;
using Heapwright.Web.Hosting;

namespace Heapwright.Web.Showing;

/// <summary>
/// Asks <c>simulate</c> for a page, few at a time, and keeps the last answers by their whole question: the same question
/// has the same answer, so that none can be out of date, and looking at another day asks nothing anew.
/// </summary>
public sealed class SimulatedHeaps : IDisposable
{
    private const int Kept = 12;
    private readonly SemaphoreSlim gate = new(Limits.QuestionsAtOnce);
    private readonly Lock shelf = new();
    private readonly LinkedList<(string Question, HeapView View)> last = new();

    /// <summary>The heap of a question.</summary>
    /// <param name="question">The question.</param>
    /// <param name="typed">Takes the reason where it is wrong.</param>
    /// <param name="cancel">Gives up.</param>
    /// <returns>Null where the question is wrong.</returns>
    public async Task<HeapView?> Ask(JsonObject question, Posted typed, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(typed);
        var key = question.ToJsonString();
        if (Find(key) is { } known)
        {
            return known;
        }

        await gate.WaitAsync(cancel);
        try
        {
            if (Find(key) is { } meanwhile)
            {
                return meanwhile;
            }

            var input = Input.Read(Encoding.UTF8.GetBytes(key), Say.Of("common.question"));
            var view = HeapView.Of(
                SimulateAnswers.Answer(input, SimulateLimits.Web, cancellation: cancel).Json
            );
            Keep(key, view);
            return view;
        }
        catch (InputProblem problem)
        {
            typed.Refuse(Refusal.Of("", "sites.question_wrong", problem.Message));
            return null;
        }
        finally
        {
            gate.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => gate.Dispose();

    private HeapView? Find(string key)
    {
        lock (shelf)
        {
            for (var node = last.First; node is not null; node = node.Next)
            {
                if (node.Value.Question == key)
                {
                    last.Remove(node);
                    last.AddFirst(node);
                    return node.Value.View;
                }
            }

            return null;
        }
    }

    private void Keep(string key, HeapView view)
    {
        lock (shelf)
        {
            last.AddFirst((key, view));
            if (last.Count > Kept)
            {
                last.RemoveLast();
            }
        }
    }
}
