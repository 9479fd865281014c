using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heapwright.App.Diary;
using Heapwright.App.Library;
using Heapwright.App.Sites;
using Heapwright.App.Texts;
using Heapwright.Core.Diagnosis;

namespace Heapwright.App.Contract;

/// <summary>Answers <c>diagnose</c>: what explains the signs of a heap, and what to ask next.</summary>
public static class DiagnoseAnswers
{
    private const double LeastTold = 0.005; // chance of a cause that is still listed
    private const int FewestTold = 5;
    private const int MostQuestions = 5;
    private const double CautionFrom = 0.25; // chance of a cause whose cautions are shown
    private const double AmountsFrom = 0.08; // and of one for which amounts of greens and browns are worked out
    private const double FireCautionFrom = 0.03; // and of one that may burn

    /// <summary>Answers a question.</summary>
    /// <param name="input">The question.</param>
    /// <param name="measures">The measures of its sentences and its text; metric if null.</param>
    /// <param name="stock">What is at hand, of which the amounts are then told; null where that is not known.</param>
    /// <param name="tried">What was done against causes before, as the diary of a heap has it; none if null.</param>
    /// <exception cref="InputProblem">The question is wrong.</exception>
    public static Answer Answer(
        Input input,
        Measures? measures = null,
        IReadOnlyList<StuffToAdd>? stock = null,
        IReadOnlyList<TriedRemedy>? tried = null
    )
    {
        ArgumentNullException.ThrowIfNull(input);
        var assumptions = new Assumptions(measures ?? Measures.Metric);
        var question = new DiagnoseReader(assumptions).Read(input);
        var found = new Diagnoser(
            SignModelReader.Model,
            question.Facts.Concat(Tried(tried ?? [], question))
        ).Answer(question.Open(SignModelReader.Questions));
        if (question.Facts.IsEmpty)
        {
            assumptions.Say("signs.nothing_told");
        }

        assumptions.Say("signs.chances_ours");
        var words = new DiagnoseWording(assumptions.Measures);
        var amounts = new DiagnoseAmounts(
            question,
            found
                .Causes.Where((c, at) => at == 0 || c.Probability >= AmountsFrom)
                .Select(c => c.Cause.Id)
                .ToHashSet(StringComparer.Ordinal),
            assumptions
        );
        var told = new DiagnoseTold(found, Listed(found), amounts, words, question.Clashes)
        {
            FromStock = FromStock(found, amounts, stock, assumptions.Measures),
        };
        var cautions = Cautions(question, found, told);
        var json = new JsonObject
        {
            ["schema"] = Json.Schema,
            ["causes"] = new JsonArray([.. told.Listed.Select(c => Cause(c, told))]),
            ["healthy_probability"] = found.Healthy,
            ["ask_next"] = new JsonArray([
                .. found.AskNext.Take(MostQuestions).Select(q => Ask(q, words)),
            ]),
            ["contradictions"] = Json.Of(told.Contradictions),
            ["assumptions"] = assumptions.ToJson(),
            ["cautions"] = cautions,
        };
        return new Answer(json, Yes: true, DiagnoseText.Of(told, assumptions, cautions));
    }

    // What helped before says something only where there is trouble again: else the heap is simply well.
    private static IEnumerable<SignFact> Tried(
        IReadOnlyList<TriedRemedy> tried,
        DiagnoseQuestion question
    )
    {
        var isTroubled = question.Facts.Any(f => f.Place == "worry" && !f.IsAbsence);
        return from remedy in tried
            from outcome in SignModelReader.Outcomes
            where outcome.Answer == remedy.Answer && remedy.DaysAgo <= outcome.Days
            let fact = new TriedFact(SignModelReader.Model, remedy.Cause, outcome)
            where isTroubled || !fact.Helped
            select (SignFact)fact;
    }

    private static ImmutableArray<CauseFound> Listed(DiagnosisAnswer found) =>
        [.. found.Causes.Where((c, at) => at < FewestTold || c.Probability >= LeastTold)];

    // Of causes that are likely enough to be shown in full, and so are their cautions.
    private static Dictionary<string, StockAmounts> FromStock(
        DiagnosisAnswer found,
        DiagnoseAmounts amounts,
        IReadOnlyList<StuffToAdd>? stock,
        Measures measures
    )
    {
        var all = new Dictionary<string, StockAmounts>(StringComparer.Ordinal);
        foreach (
            var cause in stock is null
                ? []
                : found.Causes.Where((c, at) => at == 0 || c.Probability >= CautionFrom)
        )
        {
            if (amounts.Demand(cause.Cause.Id) is { Gap: MendGap.None } demand)
            {
                all[cause.Cause.Id] = new StockAmounts(demand, stock!, measures);
            }
        }

        return all;
    }

    private static JsonArray Cautions(
        DiagnoseQuestion question,
        DiagnosisAnswer found,
        DiagnoseTold told
    ) =>
        MaterialCautions.Of(
            question.Materials.Concat(told.FromStock.Values.SelectMany(s => s.Proposed)),
            [
                .. found
                    .Causes.Where(
                        (c, at) =>
                            at == 0
                            || c.Probability >= (c.Cause.MayBurn ? FireCautionFrom : CautionFrom)
                    )
                    .SelectMany(c => c.Cause.Cautions)
                    .Distinct(StringComparer.Ordinal),
            ]
        );

    private static JsonNode Cause(CauseFound found, DiagnoseTold told)
    {
        var (id, words) = (found.Cause.Id, told.Words);
        var json = new JsonObject
        {
            ["id"] = id,
            ["name"] = words.Of(id, "name"),
            ["probability"] = found.Probability,
            ["because"] = Json.Of(found.For.Select(words.Fact)),
            ["against"] = Json.Of(found.Against.Select(words.Fact)),
            ["tell_apart"] = words.Of(id, "tell"),
            ["now"] = words.Of(id, "now"),
            ["properly"] = told.Properly(id),
            ["amounts"] = told.Amounts.Json(id),
            ["amounts_unknown"] = told.Amounts.Unknown(id),
            ["watch"] = words.Of(id, "watch"),
            ["disagree"] = words.Of(id, "disagree"),
            ["source"] = Json.Of(found.Sources.Select(words.Source)),
        };
        // Only where stock is known, which the question of the contract does not tell.
        if (told.FromStock.TryGetValue(id, out var stock))
        {
            json["from_stock"] = Json.Of(stock.Lines);
        }

        return json;
    }

    // An option can be put into the question as it is: a word, or a number.
    private static JsonNode Ask(QuestionWorth worth, DiagnoseWording words)
    {
        var question = worth.Question;
        var isNumber = question.Field == "heap.age_days";
        return new JsonObject
        {
            ["field"] = question.Field,
            ["question"] = words.Ask(question),
            ["options"] = new JsonArray([
                .. question.Options.Select(o =>
                    isNumber ? (JsonNode)DiagnoseWording.Number(o) : (JsonNode)o
                ),
            ]),
            ["labels"] = Json.Of(
                question.Options.Select(o =>
                    isNumber
                        ? words.Told(question.Field, DiagnoseWording.Number(o))
                        : words.Word(question.Field, o)
                )
            ),
            ["gain"] = worth.Gain,
        };
    }
}
