using Heapwright.Core.Diagnosis;

namespace Heapwright.Core.Tests.Diagnosis;

/// <summary>The answers of a small model against Bayes' rule written out, state by state.</summary>
public class DiagnoserTests
{
    private static readonly SignModel Model = SmallModel.Model;

    [Fact]
    public void With_no_fact_the_chances_are_those_of_the_table()
    {
        var answer = new Diagnoser(Model, []).Answer([]);
        Assert.Equal(0.2, Chance(answer, "wet"), 12);
        Assert.Equal(0.1, Chance(answer, "cold"), 12);
        // No fault and hot as it should be: 0.8 * 0.9 * 0.95 * 0.6.
        Assert.Equal(0.8 * 0.9 * 0.95 * 0.6, answer.Healthy, 12);
    }

    [Fact]
    public void Facts_are_weighed_by_the_rule_of_Bayes()
    {
        var (wetAndSigns, signs) = (0.0, 0.0);
        foreach (var wet in new[] { false, true })
        {
            foreach (var cold in new[] { false, true })
            {
                var prior = (wet ? 0.2 : 0.8) * (cold ? 0.1 : 0.9);
                var drips = wet ? 0.3 * 4 / ((0.3 * 4) + 0.7) : 0.3;
                var rot = (1 - ((1 - 0.05) * (wet ? 1 - 0.6 : 1))) * (cold ? 0.5 : 1);
                signs += prior * drips * rot;
                wetAndSigns += wet ? prior * drips * rot : 0;
            }
        }

        var answer = new Diagnoser(Model, [Drips, Rot]).Answer([]);
        Assert.Equal(wetAndSigns / signs, Chance(answer, "wet"), 10);
    }

    [Fact]
    public void The_order_of_facts_changes_nothing()
    {
        var one = new Diagnoser(Model, [Drips, Rot]).Answer([]);
        var other = new Diagnoser(Model, [Rot, Drips]).Answer([]);
        Assert.Equal(Chance(one, "wet"), Chance(other, "wet"), 12);
        Assert.Equal(one.Causes.Select(c => c.Cause.Id), other.Causes.Select(c => c.Cause.Id));
    }

    [Fact]
    public void What_raises_the_odds_stands_for_a_cause_and_what_lowers_them_against_it()
    {
        var dry = new ChoiceFact(Model.Field("squeeze"), "dry");
        var wet = new Diagnoser(Model, [dry, Rot])
            .Answer([])
            .Causes.Single(c => c.Cause.Id == "wet");
        Assert.Same(Rot, Assert.Single(wet.For));
        Assert.Same(dry, Assert.Single(wet.Against));
    }

    [Fact]
    public void What_was_looked_for_and_not_found_lowers_its_causes()
    {
        var none = new WordFact(Model.Field("smell"), "rot", isAbsence: true);
        var answer = new Diagnoser(Model, [none]).Answer([]);
        Assert.InRange(Chance(answer, "wet"), 0.01, 0.199);
    }

    [Fact]
    public void The_question_that_separates_is_asked_before_the_one_that_does_not()
    {
        SignQuestion[] questions =
        [
            new("heat", "heat", ["cold"], 1),
            new("squeeze", "squeeze", ["drips", "dry"], 1),
        ];
        var asked = new Diagnoser(Model, [Rot]).Answer(questions).AskNext;
        Assert.Equal("squeeze", asked[0].Question.Code);
        Assert.DoesNotContain(asked, a => a.Question.Code == "heat");
    }

    [Fact]
    public void Words_that_cannot_both_be_right_are_named()
    {
        var none = new NoneFact(Model.Field("smell"), "none", ["rot"]);
        var (one, other, _) = Assert.Single(
            new Diagnoser(Model, [Drips, none]).Answer([]).Contradictions
        );
        Assert.Equal(["drips", "none"], [one.Word, other.Word]);
        Assert.Empty(new Diagnoser(Model, [Drips, Rot]).Answer([]).Contradictions);
    }

    [Fact]
    public void Words_that_say_the_same_count_once()
    {
        // With the same row for both words, the second changes nothing: 0.6 of wet shows either, 0.05 anyway.
        SignRow[] rows =
        [
            SmallModel.Row("stage", "stalled", "*", SignEffect.Often, 1),
            SmallModel.Row("heat", "cold", "*", SignEffect.Often, 1),
            SmallModel.Row("smell", "rot", "*", SignEffect.Anyway, 0.05),
            SmallModel.Row("smell", "rot", "wet", SignEffect.Shows, 0.6),
            SmallModel.Row("smell", "sewage", "*", SignEffect.Anyway, 0.05),
            SmallModel.Row("smell", "sewage", "wet", SignEffect.Shows, 0.6),
        ];
        SignModel Made(params SameSign[] same) =>
            new([SmallModel.Cause("wet", CauseGroup.Fault, 0.2)], rows, []) { Same = [.. same] };
        double Wet(SignModel model, params string[] told) =>
            new Diagnoser(
                model,
                told.Select(w => new WordFact(model.Field("smell"), w, isAbsence: false))
            )
                .Answer([])
                .Causes[0]
                .Probability;

        var same = Made(new SameSign("foul", "smell", ["rot", "sewage"]));
        // By hand: wet shows it with 1 - 0.95 x 0.4 = 0.62: 0.2 x 0.62 / (0.2 x 0.62 + 0.8 x 0.05) = 0.7561.
        Assert.Equal(0.7561, Wet(same, "rot"), 4);
        Assert.Equal(0.7561, Wet(same, "rot", "sewage"), 4);
        // Two signs of their own: 0.2 x 0.62^2 / (0.2 x 0.62^2 + 0.8 x 0.05^2) = 0.9746.
        Assert.Equal(0.9746, Wet(Made(), "rot", "sewage"), 4);
    }

    [Fact]
    public void A_reading_far_from_its_class_of_heat_makes_the_reading_itself_doubtful()
    {
        var near = new ReadingFact(Model, 12, "core", null, 3);
        var far = new ReadingFact(Model, 55, "core", null, 3);
        Assert.InRange(
            Chance(new Diagnoser(Model, [near]).Answer([]), "reading_misleads"),
            0,
            0.05
        );
        Assert.InRange(Chance(new Diagnoser(Model, [far]).Answer([]), "reading_misleads"), 0.9, 1);
    }

    [Fact]
    public void A_row_that_names_no_cause_is_refused()
    {
        var row = SmallModel.Row("smell", "rot", "wett", SignEffect.Shows, 0.5);
        var leak = SmallModel.Row("smell", "rot", "*", SignEffect.Anyway, 0.5);
        var problem = Assert.Throws<InvalidOperationException>(() =>
            new SignModel([SmallModel.Cause("wet", CauseGroup.Fault, 0.1)], [leak, row], [])
        );
        Assert.Contains("wett", problem.Message, StringComparison.Ordinal);
    }

    private static ChoiceFact Drips { get; } = new(Model.Field("squeeze"), "drips");

    private static WordFact Rot { get; } = new(Model.Field("smell"), "rot", isAbsence: false);

    private static double Chance(DiagnosisAnswer answer, string cause) =>
        answer.Causes.Single(c => c.Cause.Id == cause).Probability;
}
