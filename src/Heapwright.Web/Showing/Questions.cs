using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Heapwright.App.Changes;
using Heapwright.App.Contract;

namespace Heapwright.Web.Showing;

/// <summary>Asks the questions of the contract from a page; a wrong question is told beside the form.</summary>
public static class Questions
{
    /// <summary>Asks <c>mix</c>.</summary>
    /// <param name="question">The question.</param>
    /// <param name="show">How quantities are shown in its sentences.</param>
    /// <param name="typed">Takes the reason where it is wrong.</param>
    public static JsonObject? Mix(JsonObject question, Shown show, Posted typed) =>
        Ask(question, typed, asked => MixAnswers.Answer(asked, measures: show.Measures));

    /// <summary>Asks <c>recipe</c>.</summary>
    /// <param name="question">The question.</param>
    /// <param name="show">How quantities are shown in its sentences.</param>
    /// <param name="typed">Takes the reason where it is wrong.</param>
    public static JsonObject? Recipe(JsonObject question, Shown show, Posted typed) =>
        Ask(question, typed, asked => RecipeAnswers.Answer(asked, measures: show.Measures));

    /// <summary>Asks <c>build</c>.</summary>
    /// <param name="question">The question.</param>
    /// <param name="typed">Takes the reason where it is wrong.</param>
    public static JsonObject? Build(JsonObject question, Posted typed) =>
        Ask(question, typed, asked => BuildAnswers.Answer(asked));

    /// <summary>JSON as it is kept.</summary>
    /// <param name="json">The JSON.</param>
    public static JsonElement Element(JsonNode json)
    {
        ArgumentNullException.ThrowIfNull(json);
        using var document = JsonDocument.Parse(json.ToJsonString());
        return document.RootElement.Clone();
    }

    /// <summary>A kept question, read as the contract reads it.</summary>
    /// <param name="json">The question.</param>
    public static Input Input(JsonElement json) =>
        App.Contract.Input.Read(
            Encoding.UTF8.GetBytes(json.GetRawText()),
            Say.Of("common.question")
        );

    private static JsonObject? Ask(JsonObject question, Posted typed, Func<Input, Answer> answer)
    {
        ArgumentNullException.ThrowIfNull(typed);
        try
        {
            return answer(
                App.Contract.Input.Read(
                    Encoding.UTF8.GetBytes(question.ToJsonString()),
                    Say.Of("common.question")
                )
            ).Json;
        }
        catch (InputProblem problem)
        {
            typed.Refuse(Refusal.Of("", "sites.question_wrong", problem.Message));
            return null;
        }
    }
}
