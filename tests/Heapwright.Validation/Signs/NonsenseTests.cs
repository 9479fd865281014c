using Heapwright.App.Contract;

namespace Heapwright.Validation.Signs;

/// <summary>Questions that contradict themselves: what does not fit together is said, or the question is refused.</summary>
public class NonsenseTests
{
    public static TheoryData<string> Cases =>
        [.. SignCase.Nonsense.Select(c => c["id"]!.GetValue<string>())];

    [Theory]
    [MemberData(nameof(Cases))]
    public void What_does_not_fit_together_is_said(string id)
    {
        var told = SignCase.Nonsense.Single(c => c["id"]!.GetValue<string>() == id);
        var contradicts = told["contradicts"]!.AsArray().Count > 0;
        try
        {
            var answer = SignCase.Answer(told["question"]!.AsObject());
            Assert.Equal(contradicts, answer["contradictions"]!.AsArray().Count > 0);
            Assert.NotEmpty(answer["ask_next"]!.AsArray());
            var first = answer["causes"]!.AsArray()[0]!["id"]!.GetValue<string>();
            Assert.DoesNotContain(
                first,
                told["wrong"]?.AsArray().Select(w => w!.GetValue<string>()) ?? []
            );
        }
        catch (InputProblem problem)
        {
            Assert.True(contradicts, problem.Message);
        }
    }

    [Fact]
    public void Written_cases_seldom_contradict_themselves()
    {
        var clashing = SignScore.Written.Count(c =>
            c.Answer["contradictions"]!.AsArray().Count > 0
        );
        Assert.InRange(clashing, 0, SignCase.Written.Count / 10);
    }
}
