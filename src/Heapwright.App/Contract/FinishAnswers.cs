using System.Text.Json.Nodes;
using Heapwright.App.Library;
using Heapwright.App.Texts;
using Heapwright.Core.FinishedCompost;
using Heapwright.Core.Heaps;
using Heapwright.Core.Materials;
using Heapwright.Core.Quantities;

namespace Heapwright.App.Contract;

/// <summary>Answers <c>finish</c>: how far a heap has come, what it is ready for, how much there is and where it goes.</summary>
public static class FinishAnswers
{
    private const double HotOverAir = 25; // K: so warm a core can scald and steam

    /// <summary>Answers a question.</summary>
    /// <param name="input">The question.</param>
    /// <param name="seed">The seed where the question names none.</param>
    /// <param name="measures">The measures of its sentences and its text; metric if null.</param>
    /// <param name="built">The heap as it was built, for a question without <c>ingredients</c>; null where it is not known.</param>
    /// <param name="simulated">What the simulation of the heap says of it now; null where it was not followed.</param>
    /// <exception cref="InputProblem">The question is wrong.</exception>
    public static Answer Answer(
        Input input,
        ulong? seed = null,
        Measures? measures = null,
        Heap? built = null,
        MatterGiven? simulated = null
    )
    {
        ArgumentNullException.ThrowIfNull(input);
        var assumptions = new Assumptions(measures ?? Measures.Metric);
        var reader = new FinishReader(assumptions, built);
        var question = reader.Read(input, seed) with { Simulated = simulated };
        var answer = Finisher.Answer(question, FinishTableReader.Tables);
        FinishRemarks.SayHow(question, answer, assumptions);
        var words = new FinishWords(assumptions.Measures);
        var told = new FinishTold(
            question,
            answer,
            reader,
            assumptions,
            FinishRemarks.Missing(question, answer, reader, words),
            FinishRemarks.Notes(question, answer, words),
            Cautions(question, answer, reader)
        );
        return new Answer(Write(told, words), Yes: true, FinishText.Of(told, words));
    }

    /// <summary>Whether a question can be read at all.</summary>
    /// <param name="input">The question.</param>
    /// <exception cref="InputProblem">It is wrong.</exception>
    internal static void Check(Input input) =>
        new FinishReader(new Assumptions(Measures.Metric), built: null).Read(input, null);

    private static JsonObject Write(FinishTold told, FinishWords words)
    {
        var answer = told.Answer;
        return new JsonObject
        {
            ["schema"] = Json.Schema,
            ["seed"] = told.Question.Seed,
            ["classes"] = new JsonArray([.. answer.Classes.Select(c => Class(c, words))]),
            ["stage"] = answer.Stage.Stage is { } stage ? FinishWords.Code(stage) : "cannot_tell",
            ["stage_chances"] = Chances(
                Enum.GetValues<CompostStage>().Select(FinishWords.Code),
                answer.Stage.Chances
            ),
            ["stage_why"] = Json.Of(answer.Stage.Clues.Select(words.Clue)),
            ["contradictions"] = Json.Of(
                answer.Stage.Contradictions.Select(c => words.Against(c.Earlier, c.Later))
            ),
            ["ready_for"] = new JsonArray([.. answer.Uses.Select(u => Use(u, told, words))]),
            ["wait_until"] = WaitUntil(told, words),
            ["herbicide_test"] = answer.Pots is { } pots
                ? new JsonObject
                {
                    ["verdict"] = FinishWords.Code(pots),
                    ["text"] = words.Say("pots_" + FinishWords.Code(pots)),
                }
                : null,
            ["yield"] = FinishAmounts.Yield(told),
            ["nutrients"] = FinishAmounts.Nutrients(told),
            ["apply"] = FinishAmounts.Apply(told),
            ["missing"] = new JsonArray([
                .. told.Missing.Select(m => new JsonObject
                {
                    ["field"] = m.Field,
                    ["text"] = m.Text,
                }),
            ]),
            ["notes"] = Json.Of(told.Notes),
            ["assumptions"] = told.Assumptions.ToJson(),
            ["cautions"] = told.Cautions,
        };
    }

    private static JsonNode Class(ScaleFinding finding, FinishWords words)
    {
        var scale = finding.Scale;
        return new JsonObject
        {
            ["scale"] = scale.Id,
            ["title"] = words.Scale(scale.Id),
            ["quantity"] = scale.Quantity,
            ["value"] = Json.Of(finding.Value),
            ["at_least"] = finding.IsAtLeast,
            ["class"] = finding.Class.Name,
            ["meaning"] = words.Class(scale.Id, finding.Class.Name),
            ["chances"] = Chances(scale.Classes.Select(c => c.Name), finding.Chances),
            ["from"] = Json.Of(finding.Class.Low),
            ["from_included"] = finding.Class.HoldsLow,
            ["to"] = Json.Of(finding.Class.High),
            ["to_included"] = finding.Class.HoldsHigh,
            ["boundaries"] = scale.EqualityIsPrinted ? "as_published" : "our_choice",
            ["source"] = words.Source(scale),
            ["reference"] = scale.Source,
            ["kind"] = EvidenceKinds.Word(scale.Kind),
        };
    }

    private static JsonObject Chances(IEnumerable<string> names, IEnumerable<double> chances)
    {
        var json = new JsonObject();
        foreach (var (name, chance) in names.Zip(chances))
        {
            json[name] = chance;
        }

        return json;
    }

    private static JsonNode Use(UseFinding use, FinishTold told, FinishWords words) =>
        new JsonObject
        {
            ["use"] = FinishTableReader.Word(use.Use),
            ["ready"] = FinishWords.Code(use.Verdict),
            ["chance_ripe"] = use.ChanceRipe,
            ["reasons"] = Json.Of(use.Reasons.Select(words.Because)),
            ["wait_days"] = Json.Of(use.WaitDays),
            ["from_day"] = Day(use.WaitDays, told),
            ["from_date"] = use.WaitDays is { } days ? told.Reader.Dates.After(days.Typical) : null,
        };

    private static JsonObject WaitUntil(FinishTold told, FinishWords words)
    {
        var last = told.Last;
        var open = told.Answer.Uses.All(u =>
            u.Verdict is UseVerdict.Yes or UseVerdict.WithCare or UseVerdict.No
            || u.WaitDays is { Typical: 0 }
        );
        var days = last?.WaitDays ?? (open ? Spread.Exact(0) : null);
        return new JsonObject
        {
            ["in_days"] = Json.Of(days),
            ["day"] = Day(days, told),
            ["date"] = days is { } d ? told.Reader.Dates.After(d.Typical) : null,
            ["earliest_date"] = days is { } e ? told.Reader.Dates.After(e.Low) : null,
            ["latest_date"] = days is { } l ? told.Reader.Dates.After(l.High) : null,
            ["uses"] = Json.Of(told.Awaited.Select(u => FinishTableReader.Word(u.Use))),
            ["why"] =
                last is not null ? words.Say("wait_for", words.Use(last.Use))
                : open ? words.Say("wait_for_nothing")
                : words.Say("wait_unknown"),
        };
    }

    private static JsonNode? Day(Spread? days, FinishTold told) =>
        days is { } d && told.Question.AgeDays is { } age ? Json.Of(age.Typical + d.Typical) : null;

    private static JsonArray Cautions(
        FinishQuestion question,
        FinishAnswer answer,
        FinishReader reader
    )
    {
        var codes = new List<string> { "finished_compost", "legionella_dust", "dust_mould" };
        if (
            question.Signs.Any(s => s is ("smell" or "see", "smoke") or ("see", "glow" or "flames"))
        )
        {
            codes.Insert(0, "smoke_keep_away");
        }

        if (question.Manure != false)
        {
            codes.Add("manure_in_compost");
        }

        if (question.HerbicideRisk != false || answer.Pots == PotTestVerdict.Harmed)
        {
            codes.Add("herbicide_in_compost");
        }

        if (answer.Classes.Any(c => !c.Scale.Mends && c.Class.Limits.Bars.Length > 0))
        {
            codes.Add("salt_in_compost");
        }

        if (question.AboveAir is { } above && above.Typical >= HotOverAir)
        {
            codes.Add("hot_heap");
        }

        return MaterialCautions.Of(reader.Ingredients.Select(i => i.Material), [.. codes]);
    }
}
