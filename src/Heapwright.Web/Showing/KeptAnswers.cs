using System.Text;
using System.Text.Json.Nodes;
using Heapwright.App.Changes;
using Heapwright.App.Contract;
using Heapwright.App.Texts;
using Heapwright.Web.Hosting;

namespace Heapwright.Web.Showing;

/// <summary>
/// Asks a long question for a page, few at a time, and keeps the last answers by their whole question and language: the same question
/// has the same answer, so that none can be out of date, and looking at another day asks nothing anew.
/// </summary>
/// <typeparam name="T">What an answer is shown as.</typeparam>
/// <param name="answer">Answers a question.</param>
public abstract class KeptAnswers<T>(Func<Input, Measures, CancellationToken, T> answer)
    : IDisposable
    where T : class
{
    private const int Kept = 12;
    private readonly SemaphoreSlim gate = new(Limits.QuestionsAtOnce);
    private readonly Lock shelf = new();
    private readonly LinkedList<(string Question, T Answer)> last = new();

    /// <summary>The answer to a question.</summary>
    /// <param name="question">The question.</param>
    /// <param name="measures">The measures of its sentences.</param>
    /// <param name="typed">Takes the reason where it is wrong.</param>
    /// <param name="cancel">Gives up.</param>
    /// <returns>Null where the question is wrong.</returns>
    public async Task<T?> Ask(
        JsonObject question,
        Measures measures,
        Posted typed,
        CancellationToken cancel
    )
    {
        ArgumentNullException.ThrowIfNull(question);
        ArgumentNullException.ThrowIfNull(measures);
        ArgumentNullException.ThrowIfNull(typed);
        var text = question.ToJsonString();
        var key = $"{Languages.Code} {measures} {text}";
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

            var input = Input.Read(Encoding.UTF8.GetBytes(text), Say.Of("common.question"));
            var made = answer(input, measures, cancel);
            Keep(key, made);
            return made;
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
    public void Dispose()
    {
        gate.Dispose();
        GC.SuppressFinalize(this);
    }

    private T? Find(string key)
    {
        lock (shelf)
        {
            for (var node = last.First; node is not null; node = node.Next)
            {
                if (node.Value.Question == key)
                {
                    last.Remove(node);
                    last.AddFirst(node);
                    return node.Value.Answer;
                }
            }

            return null;
        }
    }

    private void Keep(string key, T made)
    {
        lock (shelf)
        {
            last.AddFirst((key, made));
            if (last.Count > Kept)
            {
                last.RemoveLast();
            }
        }
    }
}
