using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Heapwright.App.Changes;
using Heapwright.App.Contract;
using Heapwright.App.Diary;
using Heapwright.App.Sites;

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

    /// <summary>Asks <c>finish</c>.</summary>
    /// <param name="question">The question.</param>
    /// <param name="show">How quantities are shown in its sentences.</param>
    /// <param name="typed">Takes the reason where it is wrong.</param>
    public static JsonObject? Finish(JsonObject question, Shown show, Posted typed) =>
        Ask(question, typed, asked => FinishAnswers.Answer(asked, measures: show.Measures));

    /// <summary>Asks <c>build</c>.</summary>
    /// <param name="question">The question.</param>
    /// <param name="typed">Takes the reason where it is wrong.</param>
    public static JsonObject? Build(JsonObject question, Posted typed) =>
        Ask(question, typed, asked => BuildAnswers.Answer(asked));

    /// <summary>Asks <c>diagnose</c>.</summary>
    /// <param name="question">The question.</param>
    /// <param name="show">How quantities are shown in its sentences.</param>
    /// <param name="typed">Takes the reason where it is wrong.</param>
    /// <param name="stock">What is at hand, of which amounts are told.</param>
    /// <param name="tried">What was done against causes before.</param>
    public static JsonObject? Diagnose(
        JsonObject question,
        Shown show,
        Posted typed,
        IReadOnlyList<StuffToAdd> stock,
        IReadOnlyList<TriedRemedy> tried
    )
    {
        ArgumentNullException.ThrowIfNull(show);
        return Ask(
            question,
            typed,
            asked => DiagnoseAnswers.Answer(asked, show.Measures, stock, tried)
        );
    }

    /// <summary>The water that brings a mixture to the middle of what is good, by <c>solve</c>; 0 where it needs none.</summary>
    /// <param name="mix">The question of <c>mix</c>.</param>
    public static double WaterFor(JsonObject mix)
    {
        ArgumentNullException.ThrowIfNull(mix);
        const double Aim = 57; // % of wet mass; good is 50 to 60, with leaves and straw up to 65
        var question = new JsonObject
        {
            ["find"] = "water",
            ["target_moisture_pct_wb"] = Aim,
            ["ingredients"] = mix["ingredients"]?.DeepClone(),
            ["containers"] = mix["containers"]?.DeepClone(),
        };
        return
            Ask(
                question,
                Posted.From(new DefaultHttpContext()),
                asked => SolveAnswers.Answer(asked)
            )
                is { } answer
            ? Math.Max(0, Math.Round(answer.Range("water_l")?.Typical ?? 0))
            : 0;
    }

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
            return answer(App.Contract.Input.Of(question, Say.Of("common.question"))).Json;
        }
        catch (InputProblem problem)
        {
            typed.Refuse(Refusal.Of("", "sites.question_wrong", problem.Message));
            return null;
        }
    }
}
